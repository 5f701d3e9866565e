/** Milliseconds that a browser has for taking a file: some begin to read it only after the click. */
const TO_BE_TAKEN = 60_000;

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
  setTimeout(() => URL.revokeObjectURL(address), TO_BE_TAKEN);
}
