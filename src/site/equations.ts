/** The equations of the Methods page in MathML, in parts between which a narrow page may break them, each with its words. */

export interface WrittenPart {
  readonly words: string;
  readonly mathml: string;
}

const mi = (text: string) => `<mi>${text}</mi>`;
const mn = (text: string) => `<mn>${text}</mn>`;
const mo = (text: string) => `<mo>${text}</mo>`;
const row = (...parts: string[]) => `<mrow>${parts.join('')}</mrow>`;
const sub = (base: string, index: string) => `<msub>${base}${index}</msub>`;
const sup = (base: string, power: string) => `<msup>${base}${power}</msup>`;
const subsup = (base: string, index: string, power: string) => `<msubsup>${base}${index}${power}</msubsup>`;
const frac = (over: string, under: string) => `<mfrac>${over}${under}</mfrac>`;
const paren = (...parts: string[]) => row(mo('('), ...parts, mo(')'));
const bold = (text: string) => `<mi mathvariant="bold">${text}</mi>`;

const [m1, m2, s1, s2] = [sub(mi('m'), mn('1')), sub(mi('m'), mn('2')), sub(mi('s'), mn('1')), sub(mi('s'), mn('2'))];
const square = (base: string, index: string) => subsup(mi(base), mn(index), mn('2'));
const transpose = (matrix: string) => sup(bold(matrix), mo('⊤'));
const inverse = (matrix: string) => sup(bold(matrix), row(mo('−'), mn('1')));
/** Of a study that is still to be done. */
const newOf = (matrix: string) => sub(bold(matrix), mo('+'));

export const EQUATIONS = {
  logRatio: [
    {
      words: 'y equals the natural logarithm of m2 over m1',
      mathml: row(mi('y'), mo('='), mi('ln'), frac(m2, m1), mo(',')),
    },
    {
      words: 'v equals s1 squared over n m1 squared plus s2 squared over n m2 squared minus 2 r s1 s2 over n m1 m2',
      mathml: row(
        mi('v'),
        mo('='),
        frac(square('s', '1'), row(mi('n'), square('m', '1'))),
        mo('+'),
        frac(square('s', '2'), row(mi('n'), square('m', '2'))),
        mo('−'),
        frac(row(mn('2'), mi('r'), s1, s2), row(mi('n'), m1, m2)),
      ),
    },
  ],
  standardised: [
    {
      words: 'd equals J of n minus 1 times m2 minus m1 over s1',
      mathml: row(mi('d'), mo('='), mi('J'), paren(mi('n'), mo('−'), mn('1')), frac(row(m2, mo('−'), m1), s1), mo(',')),
    },
    {
      words: 'v equals 2 times 1 minus r over n plus d squared over 2 n',
      mathml: row(
        mi('v'),
        mo('='),
        frac(row(mn('2'), paren(mn('1'), mo('−'), mi('r'))), mi('n')),
        mo('+'),
        frac(sup(mi('d'), mn('2')), row(mn('2'), mi('n'))),
      ),
    },
  ],
  model: [
    {
      words: 'y equals X beta plus u of the study plus a of the row plus e',
      mathml: row(
        bold('y'),
        mo('='),
        bold('X'),
        mi('β'),
        mo('+'),
        sub(mi('u'), mi('study')),
        mo('+'),
        sub(mi('a'), mi('row')),
        mo('+'),
        mi('e'),
        mo(','),
      ),
    },
    {
      words: 'u is normal with variance tau squared',
      mathml: row(mi('u'), mo('∼'), mi('N'), paren(mn('0'), mo(','), sup(mi('τ'), mn('2'))), mo(',')),
    },
    {
      words: 'a is normal with variance omega squared',
      mathml: row(mi('a'), mo('∼'), mi('N'), paren(mn('0'), mo(','), sup(mi('ω'), mn('2'))), mo(',')),
    },
    {
      words: 'e is normal with covariance V',
      mathml: row(mi('e'), mo('∼'), mi('N'), paren(mn('0'), mo(','), bold('V'))),
    },
  ],
  restrictedLikelihood: [
    {
      words: 'the restricted log-likelihood is minus one half of n minus p times log 2 pi plus log determinant of Phi',
      mathml: row(
        mi('ℓ'),
        mo('='),
        mo('−'),
        frac(mn('1'), mn('2')),
        mo('['),
        paren(mi('n'), mo('−'), mi('p')),
        mi('ln'),
        mn('2'),
        mi('π'),
        mo('+'),
        mi('ln'),
        mo('|'),
        bold('Φ'),
        mo('|'),
      ),
    },
    {
      words: 'plus log determinant of X transpose Phi inverse X plus the weighted residual sum of squares',
      mathml: row(
        mo('+'),
        mi('ln'),
        mo('|'),
        transpose('X'),
        inverse('Φ'),
        bold('X'),
        mo('|'),
        mo('+'),
        transpose('e'),
        inverse('Φ'),
        bold('e'),
        mo(']'),
      ),
    },
  ],
  robust: [
    {
      words:
        'the CR2 covariance is M times the sum over studies of X transpose Phi inverse A e e transpose A Phi inverse X times M',
      mathml: row(
        bold('M'),
        `<munder>${mo('∑')}${mi('k')}</munder>`,
        paren(
          subsup(bold('X'), mi('k'), mo('⊤')),
          subsup(bold('Φ'), mi('k'), row(mo('−'), mn('1'))),
          sub(bold('A'), mi('k')),
          sub(bold('e'), mi('k')),
          subsup(bold('e'), mi('k'), mo('⊤')),
          sub(bold('A'), mi('k')),
          subsup(bold('Φ'), mi('k'), row(mo('−'), mn('1'))),
          sub(bold('X'), mi('k')),
        ),
        bold('M'),
        mo(','),
      ),
    },
    {
      words: 'where A S A equals Phi and S equals Phi minus X M X transpose',
      mathml: row(
        sub(bold('A'), mi('k')),
        paren(
          sub(bold('Φ'), mi('k')),
          mo('−'),
          sub(bold('X'), mi('k')),
          bold('M'),
          subsup(bold('X'), mi('k'), mo('⊤')),
        ),
        sub(bold('A'), mi('k')),
        mo('='),
        sub(bold('Φ'), mi('k')),
      ),
    },
  ],
  target: [
    {
      words: 'the contrast c of r is x of r minus the kept share times x of 0, transposed, times beta',
      mathml: row(
        mi('c'),
        paren(mi('r')),
        mo('='),
        sup(row(mo('['), mi('x'), paren(mi('r')), mo('−'), mi('p'), mi('x'), paren(mn('0')), mo(']')), mo('⊤')),
        mi('β'),
        mo(','),
      ),
    },
    {
      words:
        'a reserve r belongs to the interval when the absolute value of c over its standard error is at most the quantile of t with the degrees of freedom at r',
      mathml: row(
        frac(row(mo('|'), mi('c'), paren(mi('r')), mo('|')), row(mi('se'), paren(mi('r')))),
        mo('≤'),
        mi('t'),
        paren(mi('df'), paren(mi('r'))),
      ),
    },
  ],
  plannedStudy: [
    {
      words: 'the new effects y plus are normal about X plus times beta hat',
      mathml: row(newOf('y'), mo('∼'), mi('N'), paren(newOf('X'), mi('β̂'), mo(','), bold('Δ')), mo(',')),
    },
    {
      words: 'with covariance Delta, Phi plus and X plus times C times X plus transpose',
      mathml: row(
        bold('Δ'),
        mo('='),
        newOf('Φ'),
        mo('+'),
        newOf('X'),
        bold('C'),
        subsup(bold('X'), mo('+'), mo('⊤')),
        mo(','),
      ),
    },
    {
      words: 'and for the log ratio v is 2 times the squared coefficient of variation times 1 minus r over n',
      mathml: row(
        mi('v'),
        mo('='),
        frac(row(mn('2'), sup(mi('CV'), mn('2')), paren(mn('1'), mo('−'), mi('r'))), mi('n')),
      ),
    },
  ],
  plannedLimit: [
    {
      words:
        'M becomes M minus M x x transpose M over tau squared plus omega squared plus x transpose M x, where an arm x has people without end',
      mathml: row(
        bold('M'),
        mo('→'),
        bold('M'),
        mo('−'),
        frac(
          row(bold('M'), bold('x'), transpose('x'), bold('M')),
          row(sup(mi('τ'), mn('2')), mo('+'), sup(mi('ω'), mn('2')), mo('+'), transpose('x'), bold('M'), bold('x')),
        ),
      ),
    },
  ],
  fatigue: [
    {
      words: 'the drop equals a plus b times reserve, times e to the minus hours over T',
      mathml: row(
        mi('drop'),
        mo('='),
        paren(mi('a'), mo('+'), mi('b'), mo('·'), mi('reserve')),
        mi('exp'),
        paren(mo('−'), frac(mi('hours'), mi('T'))),
      ),
    },
  ],
} as const satisfies Record<string, readonly WrittenPart[]>;
