import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { cameraDrawing } from '../../report/cameraDrawing.ts';
import { planDrawing, planExtent } from '../../report/planDrawing.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { sideDrawing, sideExtent } from '../../report/sideDrawing.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { Figure, Subject } from './figure.ts';

/** As the findings say it: camera and lens are known to about a fifth of what they lose (common practice, no source). */
const share = (value: number): string => formatQuantity(value, 'share', { band: [0.8 * value, 1.2 * value] });

/** What each camera sees, as large as the sheet allows. */
export function pictureFigures({ assessment, picture, manner }: Subject): readonly Figure[] {
  const pictures = assessment.data?.pictures ?? [];
  const seen = pictures.map((report): Figure => {
    const name = `${report.role} camera`;
    const { byGroup } = report;
    const hidden = Object.entries(byGroup)
      .filter(([, value]) => value > 0.0005)
      .map(([what, value]) => `${WORDS[what] ?? what} ${share(value)}`);
    return {
      key: `camera ${report.camera}`,
      title: `What the ${name} sees`,
      says: `In a level hover. Propellers stand in ${report.discsTouch > 0 ? share(report.discsTouch) : 'none'} of it. Light lost: ${hidden.length > 0 ? hidden.join(', ') : 'none to speak of'}.`,
      draw: {
        kind: 'drawing',
        of: (width) => {
          const drawing = cameraDrawing(report, name);
          return { drawing, pen: drawing.frame.width / width };
        },
      },
    };
  });
  return pictures.length === 0 ? seen : [...seen, ...whence(picture, manner)];
}

/** From where they look: the aircraft from above and from its side. */
function whence(picture: AircraftPicture, { system = 'metric' }: Manner): readonly Figure[] {
  const [above, beside] = [planExtent(picture), sideExtent(picture, 'right')];
  return [
    {
      key: 'above',
      title: 'Where they look from',
      draw: {
        kind: 'drawing',
        of: (width) => {
          const pen = above.width / Math.max(width - 120, 120);
          const overlays = ['camera view'] as const;
          return { drawing: planDrawing(picture, { pen, detail: 'full', overlays, system }), pen };
        },
      },
    },
    {
      key: 'beside',
      title: 'and how they tilt',
      draw: {
        kind: 'drawing',
        of: (width) => {
          const pen = beside.width / Math.max(width - 60, 120);
          return { drawing: sideDrawing(picture, { pen, nose: 'right' }), pen };
        },
      },
    },
  ];
}

const WORDS: Readonly<Record<string, string>> = {
  discs: 'to the propellers',
  arms: 'to the arms',
  guards: 'to the guards',
  frame: 'to the frame',
  antenna: 'to an antenna',
  load: 'to what it carries',
};
