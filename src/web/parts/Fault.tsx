/** What is wrong with what was typed into a field, said at once. */
export function Fault({ id, fault }: { readonly id: string; readonly fault: string }) {
  return (
    fault && (
      <small id={`${id}-fault`} className="fault" role="alert">
        {fault}
      </small>
    )
  );
}
