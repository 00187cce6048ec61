import type { Assessment } from '../../assess/assessment.ts';

/** Every fit rule that was looked at and passed: what was checked matters as much as what failed. */
export function Checked({ fit }: { readonly fit: Assessment['fit'] }) {
  const passing = fit.filter((line) => line.passes);
  if (passing.length === 0) return null;
  return (
    <section className="checked">
      <h3>Looked at and found right: {passing.length}</h3>
      <ul>
        {passing.map((line) => (
          <li key={`${line.id} ${line.says}`}>
            <strong>{line.title}</strong> {line.says}
          </li>
        ))}
      </ul>
    </section>
  );
}
