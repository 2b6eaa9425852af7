import { mono } from './letters.ts';
import { escaped } from './svg.ts';
import type { Theme } from './theme.ts';

/** A rendered answer as an SVG page: one line of text a row. Sizes in px. */
const line_px = 20;
const character_px = 8.4;
const margin_px = 24;

const palettes = {
  light: '.page { fill: #fbf7ef } text { fill: #2b2622 } .hurt { fill: #a3350b }',
  dark: '.page { fill: #201c19 } text { fill: #ece4d8 } .hurt { fill: #ff9b6b }',
};

/** Without a theme the page follows its reader's, which a browser knows and a PNG does not. */
export function textPage(text: string, { title, theme }: { title: string; theme?: Theme }): string {
  const lines = text.trimEnd().split('\n');
  const width = Math.ceil(Math.max(...lines.map((line) => line.length), 40) * character_px + 2 * margin_px);
  const height = lines.length * line_px + 2 * margin_px;
  const rows = lines.map((line, index) => {
    const y = margin_px + (index + 0.8) * line_px;
    return `  <text x="${margin_px}" y="${y.toFixed(0)}" class="${styleOf(line, index)}" xml:space="preserve">${escaped(line)}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">
  <title>${escaped(title)}</title>
  <desc>${escaped(lines.join(' '))}</desc>
  <style>
${styles(theme)}
  </style>
  <rect class="page" width="${width}" height="${height}" rx="10"/>
${rows.join('\n')}
</svg>
`;
}

function styles(theme: Theme | undefined): string {
  if (theme) {
    return `    ${palettes[theme]}\n    text { font-size: 14px; font-family: '${mono}', monospace } .lead { font-weight: 700 }`;
  }
  return `    .page { fill: #fbf7ef } text { font: 14px ui-monospace, 'DejaVu Sans Mono', monospace; fill: #2b2622 }
    .lead { font-weight: 700 } .hurt { fill: #a3350b }
    @media (prefers-color-scheme: dark) { ${palettes.dark} }`;
}

/** The answer is bold and what can hurt stands out; both are also told by their place, not by colour alone. */
function styleOf(line: string, index: number): string {
  if (line.startsWith('What can hurt') || line.startsWith('Danger')) return 'hurt';
  return index < 2 ? 'lead' : 'plain';
}
