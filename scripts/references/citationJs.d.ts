/** The part of Citation.js that is used; the packages bring no types. */

declare module '@citation-js/core' {
  /** A name as CSL has it: a person's parts, or `literal` for an organisation. */
  export interface CslName {
    readonly family?: string;
    readonly given?: string;
    readonly suffix?: string;
    readonly 'non-dropping-particle'?: string;
    readonly 'dropping-particle'?: string;
    readonly literal?: string;
  }

  /** CSL-JSON (Citation Style Language 1.0.2), as far as a study needs it. */
  export interface CslItem {
    readonly id?: string;
    readonly type?: string;
    readonly 'citation-key'?: string;
    readonly author?: readonly CslName[];
    readonly issued?: { readonly 'date-parts'?: readonly (readonly number[])[]; readonly [other: string]: unknown };
    readonly title?: string;
    readonly 'container-title'?: string | undefined;
    readonly 'container-title-short'?: string;
    readonly publisher?: string | undefined;
    readonly volume?: string;
    readonly issue?: string | undefined;
    readonly page?: string;
    /** Number of an article that has no pages. */
    readonly number?: string;
    readonly DOI?: string | undefined;
    readonly URL?: string;
    readonly note?: string;
    /** What kind of thing it is, as a style prints it in brackets. */
    readonly genre?: string;
  }

  export const plugins: {
    readonly input: {
      /** One step of reading, of a type that is named: nothing is guessed and nothing is fetched. */
      data(input: unknown, type: string): unknown;
      readonly util: {
        /** Items with what other producers write for CSL-JSON put right; leaves out a property that it cannot read. */
        clean(items: readonly unknown[]): CslItem[];
      };
    };
    readonly output: {
      format(name: string, items: readonly CslItem[], options?: Readonly<Record<string, unknown>>): unknown;
    };
    readonly config: {
      get(plugin: '@bibtex'): {
        format: { asciiOnly: boolean };
        /** Tables of what TeX's commands stand for, by their kind. */
        readonly constants: Readonly<Record<string, Record<string, unknown>>>;
      };
    };
  };
}

declare module '@citation-js/plugin-bibtex';
declare module '@citation-js/plugin-csl';
declare module '@citation-js/plugin-ris';
