import { plain } from './plain.ts';
import type { Faces } from './render.ts';

/** Where a message goes: the thread it stands in, and the one it answers. */
export interface Spot {
  readonly root: string;
  readonly to: string;
}

/** In the thread; clients without threads see an answer to the question. */
const inThread = ({ root, to }: Spot) => ({
  rel_type: 'm.thread',
  event_id: root,
  is_falling_back: true,
  'm.in_reply_to': { event_id: to },
});

const notice = ({ body, formatted_body }: Faces) => ({
  msgtype: 'm.notice',
  format: 'org.matrix.custom.html',
  body,
  formatted_body,
});

/** A notice, so that no other bot answers it; it calls on nobody but the asker. */
export const noticeOf = (faces: Faces, spot: Spot, asker: string) => ({
  ...notice(faces),
  'm.mentions': { user_ids: [asker] },
  'm.relates_to': inThread(spot),
});

/** New words in the place of an earlier message. The outer ones are for clients and bridges without edits. */
export const editOf = (faces: Faces, edited: string) => ({
  msgtype: 'm.notice',
  body: `* ${faces.brief}`,
  'm.mentions': {},
  'm.new_content': { ...notice(faces), 'm.mentions': {} },
  'm.relates_to': { rel_type: 'm.replace', event_id: edited },
});

export interface FileOut {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
  /** What it shows, in words. */
  readonly alt: string;
  readonly size_px?: { readonly width: number; readonly height: number };
}

const longestAlt = 4000;

/** `where` is what the upload gave: an address, or in an encrypted room the file's keys. */
export const fileOf = ({ name, type, bytes, alt, size_px }: FileOut, where: object, spot: Spot) => ({
  msgtype: size_px ? 'm.image' : 'm.file',
  body: plain(alt).slice(0, longestAlt),
  filename: name,
  info: { mimetype: type, size: bytes.length, ...(size_px ? { w: size_px.width, h: size_px.height } : {}) },
  'm.mentions': {},
  'm.relates_to': inThread(spot),
  ...where,
});
