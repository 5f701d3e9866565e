/** “1 study”, “2 studies”: how many, in the number that grammar asks for. */
export function countOf(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}
