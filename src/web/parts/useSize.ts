import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The inner size of an element in pixels, kept current; nought before the first layout. */
export function useSize<E extends HTMLElement>(): readonly [RefObject<E | null>, Size] {
  const ref = useRef<E>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const look = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
