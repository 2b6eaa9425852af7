/** 1️⃣ with or without its variation sign, a bare digit, the ten; what anybody can tap or type for the n-th question. */
export function numberOf(text: string): number | undefined {
  const clean = text.replace(/[\ufe0f\u20e3]/g, '').trim();
  return /^[1-9]$/.test(clean) ? Number(clean) : undefined;
}
