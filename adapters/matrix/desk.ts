import { createHash, randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Card, Reply } from '../../commands/card.ts';
import { longestLine } from '../../commands/grammar.ts';
import { editOf, noticeOf, type Spot } from './content.ts';
import { type Door, filed } from './door.ts';
import { Keyless, Later } from './later.ts';
import { numberOf } from './numbers.ts';
import type { About, Answering, Budget, Log, States, Told } from './ports.ts';
import type { Concern, Waiting } from './queue.ts';
import { addressed, type RawEvent, type Said, saidIn, wordsOf } from './read.ts';
import { type Faces, linesBelow, renderReply, saying } from './render.ts';
import { type Place, type Reply as Replied, repliesIn } from './replies.ts';

export interface DeskParts extends Answering {
  readonly door: Door;
  readonly states: States;
  readonly budget: Budget;
  readonly now: () => Date;
  readonly log: Log;
  readonly me: string;
  readonly prefix: string;
  readonly place: (room: string, sender: string) => Place;
  readonly tell?: (what: Told) => void;
  /** Whether there are keys to read encrypted rooms with. */
  readonly readsSecrets: boolean;
  /** How long an answer may take before a word says that it is being worked on. */
  readonly patience_ms?: number;
  /** How long a whole answer is waited for before an early one is shown. */
  readonly early_ms?: number;
}

/** A line to be asked, and where its answer goes. */
interface Meant {
  readonly line: string;
  readonly spot: Spot;
  readonly kind: Told['kind'];
  /** The answer takes the place of this one. */
  readonly before?: Replied;
  /** The question the answer is kept under. */
  readonly question: string;
  /** The message that it is asked about. */
  readonly on?: string;
  /** What it is asked below, which `again` means in it. */
  readonly about?: About | undefined;
}

/** What was worked out for a question, kept while it can't be delivered. */
interface Prepared {
  readonly reply?: Reply;
  readonly content: ReturnType<typeof renderReply>;
  readonly below: { readonly lines: string[]; readonly about?: About };
  readonly files: Map<number, object>;
  readonly fault?: string;
}

/** Nobody sees a sign of typing for less. */
const typing_ms = 300;
const usualPatience_ms = 1500;
const usualEarly_ms = 700;
/** A key may come a little after its message: for so many tries nothing is said, and after so many it is given up. */
const quietTries = 4;
const keyTries = 40;
const keyWait_s = 3;

/**
 * Reads what was sent, asks, and answers each question once, however often it is taken up: one message, since every try
 * sends it under the same id, and what is remembered is added once, since ids of it come of the asking (`who.asking`).
 *
 * Two things stay open where the program is killed after a command has done its work and before it is kept that its
 * answer stands, a few milliseconds. What is taken away by its place in a list (`log drop 1`) then takes the one behind it
 * along, and a build that got a free name (`start`) may get a checklist of the next one; of anything else the second try
 * finds it done, and may say so. And a homeserver forgets ids of messages after a while: where the next process comes
 * later than that, the answer is there twice.
 */
export function createDesk(parts: DeskParts) {
  const { door, now, log, me, budget, patience_ms = usualPatience_ms, early_ms = usualEarly_ms } = parts;
  const replies = repliesIn(parts.states, now);
  const prepared = new Map<string, Promise<Prepared>>();

  return { handle, concerns, over: ({ event }: Waiting) => void prepared.delete(event) };

  /** Whether an event is one to answer: judged before it is kept, so that other people's talk leaves no trace. */
  async function concerns(event: RawEvent): Promise<Concern | undefined> {
    const meant = await meantBy(event);
    return meant && (parts.isUrgent(meant.line) ? 'urgent' : 'usual');
  }

  async function handle({ room, event: id, sender }: Waiting, attempt: number): Promise<void> {
    const event = await door.fetch(room, id);
    if (event === undefined) return;
    if (event === 'secret') return unreadable({ room, event: id, sender }, attempt);
    const meant = await meantBy(event);
    if (!meant) return;
    const before = meant.before ?? (attempt > 1 ? await replies.to(meant.question) : undefined);
    const stands = before?.by === id;
    if (stands && before.owes === undefined) return;
    // The question was edited since, and answered as it is now.
    if (meant.kind !== 'edit' && before?.by !== undefined && !stands) return;
    const known = prepared.has(id);
    if (meant.kind === 'number' || meant.kind === 'reaction') await replies.keepChosen(id, meant, sender);
    if (!known && !parts.isUrgent(meant.line)) patient(event, attempt);
    await answered(event, { ...meant, ...(before ? { before } : {}) }, known);
  }

  /** Asking too fast is no reason to be refused: the answer comes a little later. */
  function patient({ room_id: room = '', sender }: RawEvent, attempt: number): void {
    const { wait_s } = budget.take({ asker: sender, guild: room }, now());
    if (wait_s > 0 && attempt < 100) throw new Later('asked faster than is answered', wait_s);
  }

  async function answered(event: RawEvent, meant: Meant, known: boolean): Promise<void> {
    const started = performance.now();
    const room = event.room_id ?? '';
    const early = Promise.withResolvers<Card>();
    const work = prepared.get(event.event_id) ?? prepare(event, meant, early.resolve);
    prepared.set(event.event_id, work);
    let { before } = meant;
    let waited = false;
    let typing = false;
    const slow = setTimeout(() => {
      typing = true;
      door.typing(room, true).catch(() => {});
    }, typing_ms);
    if (!known) {
      const quick = await within(work, before ? patience_ms : early_ms);
      waited = !quick && !door.isHeldBack();
      if (waited) before ??= await meanwhile(event, meant, work, early.promise);
    }
    const done = await work;
    clearTimeout(slow);
    await deliver(event, { ...meant, ...(before ? { before } : {}) }, done);
    if (typing) door.typing(room, false).catch(() => {});
    const refused = done.reply?.kind === 'error';
    const outcome = done.fault ? 'failed' : refused ? 'refused' : waited ? 'deferred' : 'answered';
    const command = done.reply?.kind === 'card' ? done.reply.card.command : '';
    parts.tell?.({ kind: meant.kind, command, outcome, took_s: (performance.now() - started) / 1000 });
  }

  async function prepare(event: RawEvent, meant: Meant, early: (card: Card) => void): Promise<Prepared> {
    const { line, about } = meant;
    const { direct, mayModerate } = parts.place(event.room_id ?? '', event.sender);
    const files = new Map<number, object>();
    if (!direct && parts.isPrivate(line)) {
      const faces = saying('That answer is for you alone: ask me in a room with nobody but the two of us.');
      return { content: faces, below: { lines: [] }, files };
    }
    const who = {
      asker: `matrix:${event.sender}`,
      place: `matrix:${event.room_id}`,
      mayModerate,
      asking: event.event_id,
    };
    let asked = line;
    try {
      if (about) await parts.recall(about, who);
      asked = await whole(event, meant);
      const reply = await parts.answer(asked, who, early);
      const last = reply.kind === 'card' ? await parts.last(who) : undefined;
      const below = { lines: linesBelow(reply), ...(last ? { about: last } : {}) };
      return { reply, content: renderReply(reply), below, files };
    } catch (err) {
      const fault = randomUUID().slice(0, 8);
      log.error({ err, fault }, 'a question could not be answered');
      const words = `That went wrong here, not with you. It is logged as ${fault}; the next question is answered as usual.`;
      return { content: saying(words, await parts.cautions(asked, who)), below: { lines: [] }, files, fault };
    }
  }

  /** With the message that it is asked about behind it: neither the words nor the line are kept. */
  async function whole({ room_id: room = '' }: RawEvent, { line, on }: Meant): Promise<string> {
    const message = on === undefined ? undefined : await door.fetch(room, on);
    if (message === undefined || message === 'secret') return line;
    return `${line} ${wordsOf(message).replace(/\s*\n+\s*/g, '; ')}`.slice(0, longestLine);
  }

  /** Typical values, or a word that it takes a little, in the place where the answer is going to be. */
  async function meanwhile(event: RawEvent, meant: Meant, work: Promise<Prepared>, early: Promise<Card>) {
    const done = work.then(() => 'done' as const);
    const late = sleep(Math.max(0, patience_ms - early_ms), 'late' as const, { ref: false });
    const first = await Promise.race([done, early, late]);
    if (first === 'done') return undefined;
    if (first !== 'late') return hold(event, meant, facesOf(first));
    const held = await hold(event, meant, saying('Working on it …'));
    const next = await Promise.race([done, early]);
    if (next !== 'done') {
      const { event_id, room_id: room = '' } = event;
      await door.send(room, editOf(facesOf(next), held.id), `${event_id}.early`);
    }
    return held;
  }

  /** What the answer takes the place of. */
  async function hold(
    { event_id, room_id: room = '', sender }: RawEvent,
    { spot, question }: Meant,
    faces: ReturnType<typeof saying>,
  ): Promise<Replied> {
    const id = await door.send(room, noticeOf(faces, spot, sender), `${event_id}.wait`);
    const held = { id, root: spot.root, files: [] };
    await replies.note({ room, question, asker: sender }, held);
    return held;
  }

  async function deliver(event: RawEvent, { spot, before, question }: Meant, done: Prepared): Promise<void> {
    const { event_id, room_id: room = '', sender } = event;
    const where = { room, question, asker: sender };
    const old = before?.files ?? [];
    const print = printOf(done.content);
    const stands = before?.by === event_id;
    const said = stands ? before : await say();
    if (said.owes === undefined) return;
    for (const [at, file] of old.entries()) await door.redact(room, file, `${event_id}.gone${at}`);
    // After another process said the words the same question may have another answer: its pictures would not fit them.
    const files = said.owes === print ? await filesOf(event, spot, done) : [];
    await replies.note(where, { ...said, files, owes: undefined });

    async function say(): Promise<Replied> {
      const content = before ? editOf(done.content, before.id) : noticeOf(done.content, spot, sender);
      const sent = await door.send(room, content, `${event_id}.answer`);
      const owes = old.length > 0 || mayHaveFiles(done.reply) ? print : undefined;
      const made = { id: before?.id ?? sent, root: spot.root, files: old, by: event_id, owes };
      // Kept before the pictures: a number or an edit may come while they are still on their way.
      await replies.keep(where, made, done.below);
      return made;
    }
  }

  async function filesOf(event: RawEvent, spot: Spot, done: Prepared): Promise<readonly string[]> {
    try {
      return await sendFiles(event, spot, done);
    } catch (error) {
      if (error instanceof Later) throw error;
      // The words are there; a picture that can't be had is no reason to take them back.
      log.warn({ err: error, event: event.event_id }, 'a picture could not be sent');
      return [];
    }
  }

  async function sendFiles({ event_id, room_id: room = '' }: RawEvent, spot: Spot, done: Prepared) {
    if (done.reply?.kind !== 'card') return [];
    const sent: string[] = [];
    for (const [at, file] of (await parts.files(done.reply)).entries()) {
      const content = done.files.get(at) ?? (await filed(door, room, file, spot));
      done.files.set(at, content);
      sent.push(await door.send(room, content, `${event_id}.file${at}`));
    }
    return sent;
  }

  async function meantBy(event: RawEvent): Promise<Meant | undefined> {
    if (event.sender === me) return undefined;
    const said = saidIn(event);
    if (!said) return undefined;
    if (said.kind === 'reaction') return byReaction(event, said);
    if (said.edits !== undefined) return byEdit(event, said.text, said.edits);
    const { room_id: room = '', event_id: question } = event;
    const spot = { root: said.root ?? question, to: question };
    const number = numberOf(said.text);
    if (number !== undefined) {
      const chosen = await chosenBy(event, number, () => numbered(event, said));
      if (chosen) return { ...chosen, spot, kind: 'number', question };
    }
    const { direct, names } = parts.place(room, event.sender);
    const named = addressed(said.text, { prefix: parts.prefix, names });
    if (said.replyTo !== undefined && parts.isOnMessage(named ?? said.text))
      return { line: named ?? said.text, spot, kind: 'text', question, on: said.replyTo };
    const line = named ?? (direct ? said.text : await inOurThread(room, said));
    return line === undefined || line === '' ? undefined : { line, spot, kind: 'text', question };
  }

  /** A reply to an answer, or a line in its thread, needs no address where it begins like a question. */
  async function inOurThread(room: string, said: Extract<Said, { kind: 'text' }>): Promise<string | undefined> {
    if (!parts.isCommand(said.text)) return undefined;
    const ours =
      (said.replyTo !== undefined && (await replies.below(said.replyTo))) ||
      (said.root !== undefined && (await replies.inThread(room, said.root)));
    return ours ? said.text : undefined;
  }

  async function byReaction(event: RawEvent, { to, key }: Extract<Said, { kind: 'reaction' }>) {
    const number = numberOf(key);
    const below = number === undefined ? undefined : await replies.below(to);
    if (number === undefined || !below) return undefined;
    const chosen = await chosenBy(event, number, async () => below);
    return (
      chosen && ({ ...chosen, spot: { root: below.root, to }, kind: 'reaction', question: event.event_id } as const)
    );
  }

  /** The line of that number, as it was when it was first looked up. */
  async function chosenBy({ event_id }: RawEvent, number: number, look: () => ReturnType<typeof replies.below>) {
    const before = await replies.chosen(event_id);
    if (before) return before;
    const below = await look();
    const line = below?.lines[number - 1];
    return line === undefined ? undefined : { line, about: below?.about };
  }

  async function numbered(
    { room_id: room = '', sender }: RawEvent,
    { replyTo, root }: Extract<Said, { kind: 'text' }>,
  ) {
    if (replyTo !== undefined) return replies.below(replyTo);
    if (root !== undefined) return replies.inThread(room, root);
    return parts.place(room, sender).direct ? replies.lastFor(room, sender) : undefined;
  }

  /** The question as it is now: its answer is written anew, or given for the first time. */
  async function byEdit(event: RawEvent, words: string, question: string): Promise<Meant | undefined> {
    const { room_id: room = '', sender } = event;
    const before = await replies.to(question);
    if (before && before.asker !== sender) return undefined;
    const { direct, names } = parts.place(room, sender);
    const named = addressed(words, { prefix: parts.prefix, names }) ?? (direct || before ? words : undefined);
    if (named === undefined || named === '') return undefined;
    if (before) {
      const spot = { root: before.root, to: question };
      return { line: named, spot, kind: 'edit', question, before };
    }
    const original = await door.fetch(room, question);
    if (original === undefined || original === 'secret' || original.sender !== sender) return undefined;
    const said = saidIn(original);
    if (said?.kind !== 'text' || said.edits !== undefined) return undefined;
    return { line: named, spot: { root: said.root ?? question, to: question }, kind: 'edit', question };
  }

  /** Said once a day in a room, and in the clear: who can't be read may not be able to read either. */
  async function unreadable({ room, event, sender }: Waiting, attempt: number): Promise<void> {
    if (attempt === quietTries) {
      log.warn({ event, room }, 'a message could not be decrypted');
      if (await replies.firstUnreadable(room)) {
        const faces = saying(parts.readsSecrets ? undecryptable : noEncryption);
        await door.sendOpenly(room, noticeOf(faces, { root: event, to: event }, sender), `${event}.unreadable`);
      }
      if (!parts.readsSecrets) return;
    }
    if (attempt < keyTries) throw new Keyless('its key is not here', keyWait_s);
  }
}

/** Pictures and files come of these alone, so that nothing is drawn to learn that there is nothing to send. */
const mayHaveFiles = (reply: Reply | undefined): boolean =>
  reply?.kind === 'card' &&
  (reply.card.drawings !== undefined || reply.card.chart !== undefined || reply.card.attachment !== undefined);

const printOf = ({ body }: Faces): string => createHash('sha256').update(body).digest('hex').slice(0, 16);

const facesOf = (card: Card) => renderReply({ kind: 'card', card });

const undecryptable =
  'I could not decrypt your message, so I do not know what you asked. Send it once more; if that fails too, leave the ' +
  'room and invite me to a new one.';
const noEncryption =
  'I cannot read encrypted rooms: I was started without a folder to keep keys in (TEEMER_DATA). Invite me to a room ' +
  'without encryption, or ask whoever runs me.';

/** Whether it settles in time. */
async function within(work: Promise<unknown>, patience_ms: number): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(resolve, patience_ms, false);
  });
  try {
    return await Promise.race([work.then(() => true), late]);
  } finally {
    clearTimeout(timer);
  }
}
