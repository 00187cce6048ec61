import css from '../../report/drawing.css?raw';
import { reworded } from '../../report/reworded.ts';
import type { Drawing } from '../../report/shapes.ts';
import { writeSvg } from '../../report/writeSvg.ts';
import { wordsNow } from '../state/manner.ts';
import { tell } from '../state/notices.ts';
import { saveFile } from './files.ts';

/** Width of a saved picture [px]. */
const WIDTH = 2400;

export const fileName = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 60);

export const exportSvg = (drawing: Drawing, name: string): void =>
  saveFile(`${fileName(name)}.svg`, writeSvg(reworded(drawing, wordsNow()), css), 'image/svg+xml');

/** The sheet's own inks, for a picture that has left the page. */
function inksOf(element: Element): string {
  const style = getComputedStyle(element);
  const inks = ['--ink', '--pencil', '--paper', '--plate', '--accent'];
  return `svg{${inks.map((name) => `${name}:${style.getPropertyValue(name)}`).join(';')}}`;
}

/** Saves a view in the round on the sheet's paper, its marks over it, as PNG. */
export async function exportRound(view: HTMLCanvasElement, marks: Drawing, name: string): Promise<void> {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [view.width, view.height];
  const context = canvas.getContext('2d');
  const paper = getComputedStyle(view).getPropertyValue('--paper').trim();
  if (context === null) return;
  context.fillStyle = paper;
  context.fillRect(0, 0, canvas.width, canvas.height);
  // At once: what WebGL has drawn is gone with the next frame.
  context.drawImage(view, 0, 0);
  const text = writeSvg(reworded(marks, wordsNow()), inksOf(view) + css);
  await finish(canvas, context, text, name);
}

/** Draws the same SVG on paper and saves it as PNG. */
export async function exportPicture(drawing: Drawing, name: string): Promise<void> {
  const { width, height } = drawing.frame;
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH;
  canvas.height = Math.round((WIDTH * height) / width);
  const context = canvas.getContext('2d');
  if (context === null) return;
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  await finish(canvas, context, writeSvg(reworded(drawing, wordsNow()), css), name);
}

async function finish(
  canvas: HTMLCanvasElement,
  context: CanvasRenderingContext2D,
  svg: string,
  name: string,
): Promise<void> {
  const sized = svg.replace('<svg ', `<svg width="${canvas.width}" height="${canvas.height}" `);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(sized)}`;
  try {
    await image.decode();
    context.drawImage(image, 0, 0);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
    if (blob === null) throw new Error('no picture');
    saveFile(`${fileName(name)}.png`, blob);
  } catch {
    tell('picture', 'This browser could not make a picture of the drawing; the SVG has all of it.');
  }
}
