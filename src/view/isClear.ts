import { touchedShare } from './cover.ts';
import type { Outline } from './pictureOutline.ts';
import { ROUGH, type SeenLayer, seenLayers } from './seenLayers.ts';
import type { Camera, Occluder } from './types.ts';
import { viewFrame } from './viewFrame.ts';

/**
 * Whether occluders touch no more than a share of the picture: `touchedShare(...) <= allowed` for a search that
 * asks hundreds of times. What the outlines' areas settle is not drawn: one occluder's alone may be too much,
 * all of them together little enough; outlines apart from each other add up.
 */
export function isClear(camera: Camera, occluders: readonly Occluder[], allowed: number): boolean {
  const view = viewFrame(camera);
  const most = allowed * view.width * view.height;
  const boxes: Box[] = [];
  let [sum, apart] = [0, true];
  for (const occluder of occluders) {
    // A hub lies within its disc, so it touches nothing more.
    const drawn = occluder.kind === 'sweptDisc' ? { ...occluder, hubRadius: 0 } : occluder;
    for (const { area, least, boxes: own } of seenLayers(drawn, view, camera.exposure, ROUGH).map(measured)) {
      if (least > most) return false;
      sum += area;
      for (const box of own) {
        apart &&= boxes.every((other) => disjoint(box, other));
        boxes.push(box);
      }
      if (apart && sum > most) return false;
    }
  }
  return sum <= most || touchedShare(camera, occluders) <= allowed;
}

type Box = readonly [left: number, top: number, right: number, bottom: number];

const disjoint = (a: Box, b: Box): boolean => a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];

/** At most and at least what a layer's outlines cover together [pixels2]; holes wind the other way round. */
function measured({ outlines }: SeenLayer): { area: number; least: number; boxes: readonly Box[] } {
  const areas = outlines.map(signedArea);
  const area = Math.abs(areas.reduce((total, each) => total + each, 0));
  const holed = areas.some((each) => each < 0) && areas.some((each) => each > 0);
  const least = holed || areas.length < 2 ? area : Math.max(...areas.map(Math.abs));
  const boxes = outlines.map(boxOf);
  return { area, least, boxes: holed ? [around(boxes)] : boxes };
}

const around = (boxes: readonly Box[]): Box => [
  Math.min(...boxes.map(([left]) => left)),
  Math.min(...boxes.map(([, top]) => top)),
  Math.max(...boxes.map(([, , right]) => right)),
  Math.max(...boxes.map(([, , , bottom]) => bottom)),
];

function signedArea(outline: Outline): number {
  let twice = 0;
  for (let i = 0; i < outline.length; i += 2) {
    const j = (i + 2) % outline.length;
    twice +=
      (outline[i] as number) * (outline[j + 1] as number) -
      (outline[j] as number) * (outline[i + 1] as number);
  }
  return twice / 2;
}

function boxOf(outline: Outline): Box {
  let [left, top, right, bottom] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let i = 0; i < outline.length; i += 2) {
    const [x, y] = [outline[i] as number, outline[i + 1] as number];
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return [left, top, right, bottom];
}
