/** Says that what stands on the page is the site's own, while the reader's table is read or because it was not. */

interface Props {
  /** True while the reader's own table is wanted and the site's is shown. */
  readonly foreign: boolean;
  /** Why it was not read; null while it may still be. */
  readonly problem: string | null;
}

export function OwnTableWait({ foreign, problem }: Props) {
  if (!foreign) return null;
  return (
    <p>
      {problem === null
        ? 'Your table is being read; until then this is the site’s own.'
        : 'Your table was not read: this is the site’s own.'}
    </p>
  );
}
