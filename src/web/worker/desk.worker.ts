import { expose } from 'comlink';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import { pictureOfCraft } from '../../report/pictureOfCraft.ts';
import type { Desk } from './protocol.ts';
import { readDemo } from './readDemo.ts';
import { shelfRow } from './shelfRow.ts';

let demo: ReturnType<typeof readDemo> | undefined;
const kept = () => {
  demo ??= readDemo();
  return demo;
};

const desk: Desk = {
  open: async () => {
    const { brief, builds, shelf } = kept();
    const manner = { currency: brief.currency };
    return { brief, builds, shelf: Array.from(shelf.parts.values(), (part) => shelfRow(part, manner)) };
  },
  assess: async (build) => {
    const { shelf } = kept();
    const craft = resolveBuild(build, shelf);
    if (!craft.ok)
      return { ok: false, reasons: craft.errors.map((e) => `${e.path}: ${e.says}. ${e.remedy}`) };
    return { ok: true, picture: pictureOfCraft(craft.value), measures: [], findings: [] };
  },
};

expose(desk);
