/** The same words as a sentence begins. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** The same words as a sentence, which ends once. */
export const sentence = (words: string): string => `${capital(words)}.`.replace(/\.\.$/, '.');
