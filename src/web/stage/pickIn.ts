import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import type { PartKey } from '../../report/shapes.ts';
import { pick } from '../state/picked.ts';

/** Picks the part whose shape or handle was pressed in a drawing; nothing where there is none. */
export function pickIn(target: EventTarget, aircraft: AircraftPicture): void {
  const drawn = target instanceof Element ? target.closest<HTMLElement | SVGElement>('[data-part]') : null;
  pick(drawn === null ? undefined : inSchedule(drawn.dataset.part as PartKey, aircraft));
}

/** Where a part of the drawing stands in the schedule. */
function inSchedule(part: PartKey, aircraft: AircraftPicture): string {
  switch (part) {
    case 'propeller':
      return 'propellers';
    case 'guards':
      return 'frame';
    case 'stack':
      return 'controllers';
    case 'camera':
    case 'recording':
      return `cameras[${camerasOf(aircraft).findIndex((camera) => camera.part === part)}]`;
    case 'frame':
    case 'motors':
    case 'pack':
      return part;
  }
}

/** How a place of the schedule is grouped in the drawings. */
export function drawnAs(part: string | undefined, aircraft: AircraftPicture): PartKey | undefined {
  switch (part) {
    case 'frame':
    case 'motors':
    case 'pack':
      return part;
    case 'propellers':
      return 'propeller';
    case 'controllers':
    case 'flightController':
    case 'videoLink':
      return 'stack';
    default: {
      const camera = /^cameras\[(\d+)\]$/.exec(part ?? '')?.[1];
      return camera === undefined ? undefined : camerasOf(aircraft)[Number(camera)]?.part;
    }
  }
}

const camerasOf = ({ boxes }: AircraftPicture) =>
  boxes.filter(({ part }) => part === 'camera' || part === 'recording');
