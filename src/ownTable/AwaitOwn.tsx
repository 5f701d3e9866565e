/** Stands for numbers of the reader's own table until there are some: no other table's are shown meanwhile. */

interface Props {
  /** True while the reader's own table is meant and what is at hand is the site's. */
  readonly awaits: boolean;
  /** Why it cannot be worked out; null while it may still be. */
  readonly problem: string | null;
}

export function AwaitOwn({ awaits, problem }: Props) {
  return awaits && problem === null ? <p aria-busy="true">Your table is being read …</p> : null;
}
