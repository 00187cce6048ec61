import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const ASSETS = fileURLToPath(new URL('../../dist/web/assets/', import.meta.url));
/** Loaded when they are first needed: readers of a user's own files, the three-dimensional view, the search, every sheet but the first. */
const LATER =
  /^(BriefSheet|BuildSheet|readers|airframe3d|rounds|solidsOf|ShortlistSheet|searchForeman|searchHand|OwnPartForm|LessonView|tuneView|flyView|FlyIt|crashLogView|CrashLog|rotors|evaluate|usualScales)-/;

const kilobytes = (names: readonly string[]): number =>
  names.reduce((sum, name) => sum + gzipSync(readFileSync(ASSETS + name)).length, 0) / 1000;

describe('the built page', () => {
  const scripts = readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
  const first = scripts.filter((name) => !LATER.test(name));

  it('loads under 400 kB gzip of script on a first visit, worker included', () => {
    expect(first.length).toBeGreaterThan(1);
    console.log(
      `script, gzip: ${kilobytes(first).toFixed(0)} kB of 400; all of it ${kilobytes(scripts).toFixed(0)} kB`,
    );
    expect(kilobytes(first)).toBeLessThan(400);
  });

  it('loads under 160 kB gzip more for the view in the round, and only in one piece of its own', () => {
    const round = scripts.filter((name) => name.startsWith('airframe3d-'));
    expect(round).toHaveLength(1);
    expect(kilobytes(round)).toBeGreaterThan(50);
    expect(kilobytes(round)).toBeLessThan(160);
  });

  it('is kept whole for days without a network, what comes later too', () => {
    const worker = readFileSync(fileURLToPath(new URL('../../dist/web/offline.js', import.meta.url)), 'utf8');
    for (const name of scripts) expect(worker, name).toContain(`./assets/${name}`);
  });

  it('names what comes later only in calls for it', () => {
    for (const name of first) {
      const text = readFileSync(ASSETS + name, 'utf8');
      expect(text, name).not.toMatch(
        /(^|;)import\s*[\w{*][^;]*from\s*"\.\/(BriefSheet|BuildSheet|readers|airframe3d|ShortlistSheet|searchForeman|searchHand|tuneView|flyView|FlyIt|crashLogView|CrashLog|rotors|evaluate|usualScales)-/,
      );
    }
  });
});
