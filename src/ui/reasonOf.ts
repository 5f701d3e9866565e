/** Why something failed, as it is shown to a reader. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
