/** An estimate with its interval, “81 % (69 to 91 %)”: where a column is too narrow for both, a line ends between them and never within a number. */
export function WithInterval({ text }: { readonly text: string }) {
  const [estimate, ...interval] = text.split(' (');
  return (
    <>
      <span class="unbroken">{estimate}</span>
      {interval.length > 0 && (
        <>
          {' '}
          <span class="unbroken">({interval.join(' (')}</span>
        </>
      )}
    </>
  );
}
