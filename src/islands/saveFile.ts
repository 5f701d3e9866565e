/** Hands a file to the reader's browser as a download. */
export function saveFile({
  name,
  type,
  text,
}: {
  readonly name: string;
  readonly type: string;
  readonly text: string | Blob;
}): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
