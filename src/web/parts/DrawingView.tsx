import { memo, useMemo, useRef } from 'react';
import type { Drawing, Shape } from '../../report/shapes.ts';
import { useWords } from '../state/manner.ts';
import { sameKept } from '../state/sameKept.ts';

interface Props {
  readonly drawing: Drawing;
  /** [mm] of the aircraft for a pixel: sets the size on the screen. */
  readonly pen: number;
  readonly className?: string;
}

/** A drawing on the page, at its true scale. */
export const DrawingView = memo(function DrawingView({ drawing, pen, className = '' }: Props) {
  const words = useWords();
  const { left, top, width, height } = drawing.frame;
  return (
    <svg
      className={`drawing ${className}`}
      viewBox={`${left} ${top} ${width} ${height}`}
      width={width / pen}
      height={height / pen}
      role="img"
      aria-label={words(drawing.description)}
    >
      <ShapesView shapes={drawing.shapes} />
    </svg>
  );
});

/** Shapes alone, for a picture that has a frame of its own. */
export const ShapesView = memo(function ShapesView({ shapes }: { readonly shapes: readonly Shape[] }) {
  const words = useWords();
  return useKept(shapes).map((shape, key) => keptShape(shape, key, words));
});

/** The same shapes where they are as they were: of a drawing in which one part is slid few are drawn again. */
function useKept(shapes: readonly Shape[]): readonly Shape[] {
  const last = useRef(shapes);
  const kept = useMemo(() => sameKept(last.current, shapes), [shapes]);
  last.current = kept;
  return kept;
}

const ShapeView = memo(function ShapeView({
  shape,
  words,
}: {
  readonly shape: Shape;
  readonly words: (text: string) => string;
}) {
  return show(shape, 0, words);
});

// Shapes of a drawing have no identity of their own: their order is their key.
const keptShape = (shape: Shape, key: number, words: (text: string) => string) => (
  <ShapeView key={key} shape={shape} words={words} />
);

function show(shape: Shape, key: number, words: (text: string) => string) {
  switch (shape.kind) {
    case 'path':
      return <path key={key} className={`ink-${shape.ink}`} d={shape.d} />;
    case 'circle':
      return <circle key={key} className={`ink-${shape.ink}`} cx={shape.x} cy={shape.y} r={shape.r} />;
    case 'text':
      return (
        <text
          key={key}
          className={`hand-${shape.hand}`}
          x={shape.x}
          y={shape.y}
          fontSize={shape.size}
          textAnchor={shape.anchor}
          {...(shape.turn === undefined ? {} : { transform: `rotate(${shape.turn} ${shape.x} ${shape.y})` })}
        >
          {words(shape.text)}
        </text>
      );
    case 'turned':
      return (
        <g key={key} transform={`rotate(${shape.angle} ${shape.about.x} ${shape.about.y})`}>
          {shape.shapes.map((each, i) => show(each, i, words))}
        </g>
      );
    case 'group':
      return (
        <g key={key} data-part={shape.part}>
          {shape.shapes.map((each, i) => show(each, i, words))}
        </g>
      );
  }
}
