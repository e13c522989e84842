import { onScopeDispose, watchEffect } from 'vue';
import type { FooterWords } from './page-footer';
import { footerRules } from './page-footer';

/** Puts words at the foot of the printed pages for as long as the screen is open. */
export function usePageFooter(words: () => FooterWords): void {
  const sheet = new CSSStyleSheet();
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  watchEffect(() => sheet.replaceSync(footerRules(words())));
  onScopeDispose(() => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  });
}
