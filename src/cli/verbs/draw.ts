import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import css from '../../report/drawing.css?raw';
import { pictureOfCraft } from '../../report/pictureOfCraft.ts';
import { planDrawing, planExtent } from '../../report/planDrawing.ts';
import { sideDrawing, sideExtent } from '../../report/sideDrawing.ts';
import { solidsOf } from '../../report/solids/solidsOf.ts';
import { writeGlb } from '../../report/solids/writeGlb.ts';
import { writeSvg } from '../../report/writeSvg.ts';
import { loadBlades, loadBuild, loadShelf } from '../context.ts';
import { mustRead } from '../files.ts';
import { BadInput, type Io } from '../io.ts';
import { writeFile } from '../writeFile.ts';

export interface DrawOptions {
  readonly plan?: string;
  readonly side?: string;
  readonly glb?: string;
  readonly shelf: readonly string[];
}

/** What the machine itself takes of a drawing's width, in pixels of paper; margins and lettering come on top. */
const MACHINE_WIDTH = 640;

/** `draw`: an aircraft as a build file tells it, to scale, from above, from its side, or in the round. */
export function drawBuild(file: string, options: DrawOptions, io: Io): void {
  const { plan, side, glb } = options;
  if (plan === undefined && side === undefined && glb === undefined) {
    throw new BadInput('draw: nothing to draw. Give --plan FILE, --side FILE or --glb FILE.');
  }
  const shelf = loadShelf(options.shelf, io);
  const read = loadBuild(file, io);
  const craft = mustRead(resolveBuild(read.build, shelf, read, loadBlades(options.shelf, io)));
  const picture = pictureOfCraft(craft);
  const write = (option: string, path: string, content: string | Uint8Array, what: string): void => {
    writeFile(option, path, content, io);
    io.writeOut(`${path}: ${craft.build.name}, ${what}\n`);
  };
  if (plan !== undefined) {
    const pen = planExtent(picture).width / MACHINE_WIDTH;
    write('--plan', plan, writeSvg(planDrawing(picture, { pen, detail: 'full' }), css), 'from above');
  }
  if (side !== undefined) {
    const pen = sideExtent(picture, 'right').width / MACHINE_WIDTH;
    write('--side', side, writeSvg(sideDrawing(picture, { pen, nose: 'right' }), css), 'from its right side');
  }
  if (glb !== undefined) write('--glb', glb, writeGlb(solidsOf(craft)), 'in the round, in metres');
}
