import { useState } from 'react';
import type { Assessment } from '../../assess/assessment.ts';
import { useWords } from '../state/manner.ts';

/** Narrower than this the notes lie below it [px], and a long list would hide them. */
const BESIDE = 900;

/** Every fit rule that was looked at and passed: what was checked matters as much as what failed. */
export function Checked({ fit }: { readonly fit: Assessment['fit'] }) {
  const words = useWords();
  const [open, setOpen] = useState(() => window.innerWidth > BESIDE);
  const passing = fit.filter((line) => line.passes);
  if (passing.length === 0) return null;
  return (
    <section className="checked">
      <h3>
        <button type="button" className="checked-head" aria-expanded={open} onClick={() => setOpen(!open)}>
          Looked at and found right: {passing.length}
        </button>
      </h3>
      <ul hidden={!open}>
        {passing.map((line) => (
          <li key={`${line.id} ${line.says}`}>
            <strong>{line.title}</strong> {words(line.says)}
          </li>
        ))}
      </ul>
    </section>
  );
}
