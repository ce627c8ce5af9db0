/** The one way in: a preset's text becomes a spec, or every mistake in it is told at once. */
import { type Mistake, PresetError } from '../errors.js';
import { crossCheck } from './cross-checks.js';
import { fillDefaults } from './defaults.js';
import { presetJsonSchema } from './json-schema.js';
import { explain, type Unplaced } from './mistakes.js';
import { checkName, nameOf } from './name.js';
import { presetSchema } from './schema.js';
import type { Spec } from './spec.js';
import { dotted, type Path } from './words.js';
import { readYaml, type YamlSource } from './yaml-source.js';

/** Made once: it never changes, and every preset's mistakes are explained by it. */
const ROOT = presetJsonSchema();

/**
 * Reads a preset. Pure: the text is given, nothing is opened.
 *
 * @param text - the preset's YAML
 * @param file - its path or name; the base name without ending names the kit's folder
 * @returns the spec, with every default filled in and told in `chosen`
 * @throws {PresetError} with every mistake, in the order of the text; never anything else, whatever the text
 */
export function readPreset(text: string, file: string): Spec {
  const source = readYaml(text, isText);
  const mistakes: Mistake[] = [...checkName(file), ...source.mistakes];
  const unreadable = source.mistakes.some(({ code }) => code !== 'preset/duplicate-key');
  if (unreadable) throw new PresetError(file, inOrder(mistakes));

  // An empty file is a preset that leaves out everything, also what it must say.
  const data = source.data ?? {};
  const parsed = presetSchema.safeParse(data);
  const issues = parsed.success ? [] : explain(parsed.error.issues, { data, root: ROOT });
  mistakes.push(...[...issues, ...crossCheck(data)].map((mistake) => place(mistake, source)));
  if (mistakes.length > 0 || !parsed.success) throw new PresetError(file, inOrder(mistakes));
  return fillDefaults(parsed.data, nameOf(file));
}

/**
 * Gives mistakes that a later stage finds (a pitch too small for the barrel) their place in the preset's text.
 *
 * @param text - the text that `readPreset` accepted
 * @param mistakes - with dotted paths; those that have a line already keep it
 */
export function placeMistakes(text: string, mistakes: readonly Mistake[]): readonly Mistake[] {
  const { locate } = readYaml(text, isText);
  return inOrder(
    mistakes.map((mistake) => {
      if (mistake.line !== undefined) return mistake;
      const path =
        mistake.path === '' ? [] : mistake.path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
      return { ...mistake, ...locate(path, 'value') };
    }),
  );
}

/** The title and each label are text, whatever they look like. */
const isText = (path: Path) =>
  (path.length === 1 && path[0] === 'title') ||
  (path[0] === 'grid' && path.length === (path[1] === 'labels' ? 4 : path[1] === 'label_sets' ? 5 : -1)) ||
  path.at(-1) === 'base';

function place({ path, at, ...mistake }: Unplaced, { locate }: YamlSource): Mistake {
  return { ...mistake, path: dotted(path), ...locate(path, at) };
}

const inOrder = (mistakes: readonly Mistake[]) =>
  mistakes.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
