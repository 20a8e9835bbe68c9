/** A property of a calendar: its name with parameters, `DTSTART;TZID=America/Chicago`, and its value as it stands in the file. */
export type Property = readonly [name: string, value: string];

export type Component = {
  readonly name: string;
  readonly properties: readonly Property[];
  readonly parts?: readonly Component[];
};

/** RFC 5545 3.1: lines are folded at 75 octets, the line break left out. */
const MOST_OCTETS = 75;

/** A component and all within it as a file: lines folded, each ended by CR LF. */
export function componentText(component: Component): string {
  return linesOf(component)
    .map((line) => `${folded(line)}\r\n`)
    .join('');
}

function linesOf({ name, properties, parts = [] }: Component): string[] {
  return [
    `BEGIN:${name}`,
    ...properties.map(([key, value]) => `${key}:${value}`),
    ...parts.flatMap(linesOf),
    `END:${name}`,
  ];
}

/** A text as the value of a property (RFC 5545 3.3.11). Control characters that no calendar may hold are left out. */
export function textValue(text: string): string {
  return text
    .replace(/\r\n?/gu, '\n')
    .replace(/[^\P{Cc}\n\t]/gu, '')
    .replace(/[\\;,]/gu, '\\$&')
    .replaceAll('\n', '\\n');
}

/** Breaks between characters, never within one: a reader that unfolds after decoding must find whole characters. */
function folded(line: string): string {
  const octets = new TextEncoder();
  let lines = '';
  let current = '';
  let length = 0;
  for (const character of line) {
    const size = octets.encode(character).length;
    if (length + size > MOST_OCTETS) {
      lines += `${current}\r\n `;
      current = '';
      length = 1;
    }
    current += character;
    length += size;
  }
  return lines + current;
}
