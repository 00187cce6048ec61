import type { Box } from '../schema/fields.ts';
import type { Part } from '../schema/part.ts';

/**
 * A part's outer size [m]: its own, or one that its mass and kind suggest (common practice, no source:
 * packs are about 2 g/cm3 and twice as long as wide; boards 6 mm wider than their holes).
 */
export function sizeOf(part: Part): { readonly size: Box; readonly inferred: boolean } {
  if (part.kind !== 'propeller' && part.size) return { size: part.size, inferred: false };
  return { size: inferredSize(part), inferred: true };
}

function inferredSize(part: Part): Box {
  const mass = part.mass.value;
  switch (part.kind) {
    case 'pack': {
      const width = (mass / 2000 / 2) ** (1 / 3);
      return { length: 2 * width, width, height: width };
    }
    case 'controller':
    case 'flightController': {
      if (part.pattern === undefined) return { length: 0.03, width: 0.014, height: part.height ?? 0.005 };
      const side = part.pattern + 0.006;
      return { length: side, width: side, height: part.height ?? 0.007 };
    }
    case 'videoLink': {
      const side = (part.pattern ?? 0.024) + 0.006;
      return { length: side, width: side, height: part.height ?? 0.008 };
    }
    case 'camera':
      return { length: 1.1 * part.width, width: part.width, height: part.width };
    case 'antenna':
      return { length: 0.008, width: 0.008, height: part.length };
    default: {
      const side = Math.max(0.002, (mass / 1200) ** (1 / 3));
      return { length: side, width: side, height: side };
    }
  }
}
