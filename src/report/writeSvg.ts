import { trim } from './path.ts';
import type { Drawing, Shape } from './shapes.ts';

/**
 * A drawing as SVG text for files and reports; the page renders the same shapes itself.
 * `css` is the text of `drawing.css`, or nothing when the document around it has it.
 */
export function writeSvg(drawing: Drawing, css = ''): string {
  const { left, top, width, height } = drawing.frame;
  const box = [left, top, width, height].map(trim).join(' ');
  const style = css === '' ? '' : `<style>${css}</style>`;
  const title = `<title>${xmlText(drawing.description)}</title>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="${box}" role="img">${title}${style}${drawing.shapes.map(writeShape).join('')}</svg>`;
}

/** Drawings of one width under each other in one file; each keeps its own title. */
export function writeSvgColumn(drawings: readonly Drawing[], css = ''): string {
  const width = Math.max(...drawings.map(({ frame }) => frame.width));
  let foot = 0;
  const inner = drawings.map((drawing) => {
    const at = foot;
    foot += drawing.frame.height;
    return writeSvg(drawing).replace(
      '<svg ',
      `<svg x="0" y="${trim(at)}" width="${trim(drawing.frame.width)}" height="${trim(drawing.frame.height)}" `,
    );
  });
  const style = css === '' ? '' : `<style>${css}</style>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="0 0 ${trim(width)} ${trim(foot)}">${style}${inner.join('')}</svg>`;
}

function writeShape(shape: Shape): string {
  switch (shape.kind) {
    case 'path':
      return `<path class="ink-${shape.ink}" d="${shape.d}"/>`;
    case 'circle':
      return `<circle class="ink-${shape.ink}" cx="${trim(shape.x)}" cy="${trim(shape.y)}" r="${trim(shape.r)}"/>`;
    case 'text': {
      const turn =
        shape.turn === undefined
          ? ''
          : ` transform="rotate(${shape.turn} ${trim(shape.x)} ${trim(shape.y)})"`;
      return `<text class="hand-${shape.hand}" x="${trim(shape.x)}" y="${trim(shape.y)}" font-size="${trim(shape.size)}" text-anchor="${shape.anchor}"${turn}>${xmlText(shape.text)}</text>`;
    }
    case 'turned':
      return `<g transform="rotate(${trim(shape.angle)} ${trim(shape.about.x)} ${trim(shape.about.y)})">${shape.shapes.map(writeShape).join('')}</g>`;
    case 'group':
      return `<g class="part-${shape.part}">${shape.shapes.map(writeShape).join('')}</g>`;
  }
}

const xmlText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
