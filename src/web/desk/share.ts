import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import { briefData } from '../../build/write/briefData.ts';
import { buildData } from '../../build/write/buildData.ts';

const MARK = '#share=';
/** A shared build is a few kB; a link that swells beyond this is no build [bytes]. */
const LARGEST = 256 * 1024;
/** Longest fragment looked at [characters]. */
const LONGEST = 64 * 1024;

/** What a link carries: the texts of a build and its brief, as their files are. */
export interface Shared {
  readonly build: string;
  readonly brief: string;
}

/** The part of a link after `#`: packed text that a browser keeps to itself and sends to nobody. */
export function shareFragment(build: Build, brief: Brief): string {
  const text = JSON.stringify({
    build: JSON.stringify(buildData(build)),
    brief: JSON.stringify(briefData(brief)),
  });
  const bytes = deflateSync(strToU8(text), { level: 9 });
  const letters = btoa(String.fromCharCode(...bytes));
  return MARK + letters.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** Undefined when the fragment is no shared build; words when it is one that can't be read. */
export function readFragment(fragment: string): Shared | string | undefined {
  if (!fragment.startsWith(MARK)) return undefined;
  if (fragment.length > LONGEST) return 'The link is longer than any build.';
  try {
    const letters = fragment.slice(MARK.length).replaceAll('-', '+').replaceAll('_', '/');
    const bytes = Uint8Array.from(atob(letters), (letter) => letter.charCodeAt(0));
    const parsed: unknown = JSON.parse(strFromU8(inflated(bytes)));
    if (typeof parsed === 'object' && parsed !== null && 'build' in parsed && 'brief' in parsed) {
      const { build, brief } = parsed;
      if (typeof build === 'string' && typeof brief === 'string') return { build, brief };
    }
    return 'The link carries no build.';
  } catch {
    return 'The link is damaged: part of it may have been cut off.';
  }
}

/** @throws RangeError beyond `LARGEST`: what is packed well may unpack to anything */
function inflated(bytes: Uint8Array): Uint8Array {
  const pieces: Uint8Array[] = [];
  let size = 0;
  let ended = false;
  const stream = new Inflate((piece, last) => {
    size += piece.length;
    if (size > LARGEST) throw new RangeError(`unpacked size must be at most ${LARGEST} bytes`);
    pieces.push(piece);
    ended ||= last;
  });
  // In small pieces, so that the bound is met before much is unpacked.
  for (let at = 0; at < bytes.length; at += 1024) {
    const end = Math.min(at + 1024, bytes.length);
    stream.push(bytes.subarray(at, end), end === bytes.length);
  }
  if (!ended) throw new RangeError('the packed text has no end');
  const all = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
