/** What a wish to the server is doing. Nothing is shown as done before the server has said so. */
export type Acting<Answer> =
  | { readonly step: 'idle' }
  | { readonly step: 'busy' }
  | { readonly step: 'confirmed'; readonly answer: Answer }
  | { readonly step: 'refused'; readonly text: string; readonly code?: string };

export const idle: { readonly step: 'idle' } = { step: 'idle' };
