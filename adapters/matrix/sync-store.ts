import { type ISyncResponse, MemoryStore } from 'matrix-js-sdk';

export interface SyncPlace {
  /** Where the last run left off; undefined at the first start. */
  readonly token: string | undefined;
  /** Everything of a response, before it is acknowledged; `since` is undefined for the very first. */
  readonly received: (response: ISyncResponse, since: string | undefined) => Promise<void>;
  /** All that came up to this token is kept. */
  readonly save: (token: string) => Promise<void>;
}

/**
 * The SDK waits for both hooks before it asks for more, and asking for more tells the server that this was received:
 * so nothing is lost between them.
 */
export class SyncStore extends MemoryStore {
  readonly #place: SyncPlace;
  #since: string | undefined;

  constructor(place: SyncPlace) {
    super();
    this.#place = place;
    this.#since = place.token;
  }

  override async getSavedSyncToken(): Promise<string | null> {
    return this.#place.token ?? null;
  }

  override async setSyncData(response: ISyncResponse): Promise<void> {
    await this.#place.received(response, this.#since);
  }

  override wantsSave(): boolean {
    return this.getSyncToken() !== this.#since;
  }

  override async save(): Promise<void> {
    const token = this.getSyncToken();
    if (token === null) return;
    await this.#place.save(token);
    this.#since = token;
  }
}
