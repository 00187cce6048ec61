import type { Drawing, Shape } from './shapes.ts';

/** A drawing with every text in it said another way, as in other units. */
export const reworded = (drawing: Drawing, words: (text: string) => string): Drawing => ({
  ...drawing,
  shapes: drawing.shapes.map((shape) => shapeIn(shape, words)),
  description: words(drawing.description),
});

function shapeIn(shape: Shape, words: (text: string) => string): Shape {
  switch (shape.kind) {
    case 'text':
      return { ...shape, text: words(shape.text) };
    case 'turned':
    case 'group':
      return { ...shape, shapes: shape.shapes.map((each) => shapeIn(each, words)) };
    case 'path':
    case 'circle':
      return shape;
  }
}
