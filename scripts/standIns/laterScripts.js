/**
 * Stands in for Vite's loader of later scripts, which also loads their style sheets and asks for what they
 * import in advance: a page of this site has one style sheet, and that loader weighs more than the notice
 * that every page loads.
 */
export const __vitePreload = (load) => load();
