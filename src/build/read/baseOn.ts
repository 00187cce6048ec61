type Fields = Readonly<Record<string, unknown>>;

type Based =
  | { readonly ok: true; readonly value: Fields }
  | { readonly ok: false; readonly says: string; readonly remedy: string; readonly missing?: string };

/** More steps than this from part to part is surely a mistake. */
const LONGEST_CHAIN = 8;

/**
 * A part's fields with those of the part it is based on beneath them, and so on down. Fields are
 * taken whole: a group or list given anew replaces the one below. A part stays invented until it
 * says otherwise, since the values below are.
 */
export function baseOn(id: string, find: (id: string) => Fields | undefined): Based {
  const chain = [id];
  let fields = find(id) ?? {};
  let base = fields.basedOn;
  while (base !== undefined) {
    if (typeof base !== 'string') return { ok: true, value: fields }; // the schema words this error
    if (chain.includes(base)) {
      const round = [...chain.slice(chain.indexOf(base)), base].join(' -> ');
      const says =
        chain.length === 1
          ? `the part is based on itself (${round})`
          : `parts are based on each other in a circle (${round})`;
      return { ok: false, says, remedy: 'Take basedOn out of one of them and give its fields in full.' };
    }
    if (chain.length >= LONGEST_CHAIN) {
      const says = `parts are based on each other over more than ${LONGEST_CHAIN} steps`;
      return { ok: false, says, remedy: 'Base it on the first of them.' };
    }
    const below = find(base);
    if (!below) {
      const says = `no part has the id "${base.slice(0, 60)}"`;
      return {
        ok: false,
        says,
        remedy: 'Give the id of a part in this file or on the shelf below.',
        missing: base,
      };
    }
    if (fields.kind !== undefined && below.kind !== undefined && fields.kind !== below.kind) {
      const says = `a ${String(fields.kind)} cannot be based on a ${String(below.kind)}`;
      return { ok: false, says, remedy: 'Base it on a part of its own kind.' };
    }
    chain.push(base);
    fields = { ...below, ...fields };
    base = below.basedOn;
  }
  return { ok: true, value: fields };
}
