/** How the asker can be called later, from where they ask. */
export type Reach =
  | {
      /** In this very place, or in a conversation with them alone. */
      readonly kind: 'here' | 'direct';
      /** Where that is, in the platform's words: kept with a reminder. */
      readonly place: string;
      /** A word for them about it. */
      readonly said?: string;
    }
  | { readonly kind: 'none'; readonly why: string };

/** At a prompt, and wherever nobody has said anything else. */
export const nobodyCalls: Reach = { kind: 'none', why: 'nothing here can call you when the time comes' };
