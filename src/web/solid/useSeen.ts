import { useEffect, useState } from 'react';

/** True from the first time the element comes into the window on. */
export function useSeen(ref: { readonly current: Element | null }): boolean {
  const [seen, setSeen] = useState(false);
  useEffect(() => {
    if (seen || ref.current === null) return;
    const observer = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true);
    });
    observer.observe(ref.current);
    return () => observer.disconnect();
  }, [ref, seen]);
  return seen;
}
