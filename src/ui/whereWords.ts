import { say } from '../words/words.ts';

/** A path into a file, which may follow the name of what is wrong: `obstacles[2].stretch.features[0].depthM`. */
const PATH = /[A-Za-z]+\[\d+\](\.[A-Za-z]+(\[\d+\])?)*(?![\w[])/;

/** Where something is wrong, its path in words: 'obstacle 3, shape 1, Depth'. What has no word stays as it stands. */
export function whereWords(where: string): string {
  return where.replace(PATH, (path) => {
    const steps = path.split('.');
    const words = steps.map((step, i) => stepWords(step, i === steps.length - 1));
    return words.includes(null) ? path : words.filter((word) => word !== '').join(', ');
  });
}

/** One of a list by its number from 1; of a record only what is named last, as the rest is how the file is built. */
function stepWords(step: string, isLast: boolean): string | null {
  const [, list, index] = /^(\w+)\[(\d+)\]$/.exec(step) ?? [];
  if (list === undefined) return isLast ? labelOf(step) : '';
  const word = (say.problem.oneOf as Readonly<Record<string, string>>)[list];
  return word === undefined ? null : `${word} ${Number(index) + 1}`;
}

function labelOf(name: string): string {
  for (const fields of [say.vehicleFields, say.tripFields, ...Object.values(say.terrainFields)]) {
    const field = (fields as Readonly<Record<string, { readonly label: string } | undefined>>)[name];
    if (field) return field.label;
  }
  return name;
}
