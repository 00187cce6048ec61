import css from '../../report/drawing.css?raw';
import type { Drawing } from '../../report/shapes.ts';
import { writeSvg } from '../../report/writeSvg.ts';
import { tell } from '../state/notices.ts';
import { saveFile } from './files.ts';

/** Width of a saved picture [px]. */
const WIDTH = 2400;

const fileName = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 60);

export const exportSvg = (drawing: Drawing, name: string): void =>
  saveFile(`${fileName(name)}.svg`, writeSvg(drawing, css), 'image/svg+xml');

/** Draws the same SVG on paper and saves it as PNG. */
export async function exportPicture(drawing: Drawing, name: string): Promise<void> {
  const { width, height } = drawing.frame;
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH;
  canvas.height = Math.round((WIDTH * height) / width);
  const sized = writeSvg(drawing, css).replace(
    '<svg ',
    `<svg width="${canvas.width}" height="${canvas.height}" `,
  );
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(sized)}`;
  try {
    await image.decode();
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('no canvas');
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(image, 0, 0);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
    if (blob === null) throw new Error('no picture');
    saveFile(`${fileName(name)}.png`, blob);
  } catch {
    tell('picture', 'This browser could not make a picture of the drawing; the SVG has all of it.');
  }
}
