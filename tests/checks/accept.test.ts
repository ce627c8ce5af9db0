import { expect, test } from 'vitest';
import { accept, verdict } from '../../src/checks/accept.js';
import { CHECKS, CODES } from '../../src/checks/index.js';
import { say } from '../../src/checks/say.js';
import type { Severity } from '../../src/findings.js';

const finding = (code: string, severity: Severity = 'error') =>
  say({ code, severity, subject: 'x', message: 'x', remedies: [] });

test('an accepted code marks its findings and no other', () => {
  const given = [finding('flexure/stress'), finding('flexure/stop'), finding('flexure/stress')];
  const { findings, mistakes } = accept(given, ['flexure/stress']);
  expect(mistakes).toEqual([]);
  expect(findings.map(({ accepted }) => accepted)).toEqual([true, undefined, true]);
  expect(verdict(findings)).toEqual({ good: false, errors: 3, warnings: 0, notes: 0, accepted: 2 });
  expect(verdict(accept(given, ['flexure/stress', 'flexure/stop']).findings).good).toBe(true);
});

test('eye safety is never accepted', () => {
  const given = [finding('eye-safety/no-stop')];
  const { findings, mistakes } = accept(given, ['eye-safety/no-stop', 'eye-safety/anything']);
  expect(mistakes.map(({ code }) => code)).toEqual(['accept/eye-safety', 'accept/eye-safety']);
  expect(findings[0]!.accepted).toBeUndefined();
  expect(verdict(findings).good).toBe(false);
  expect(verdict([{ ...given[0]!, accepted: true }]).good).toBe(false);
});

test('a code that no check knows is a mistake, with the nearest one', () => {
  const { mistakes } = accept([], ['flexure/stres', '*', 'flexure', 'flexure/']);
  expect(mistakes.map(({ code }) => code)).toEqual(Array(4).fill('accept/unknown'));
  expect(mistakes[0]!.hint).toBe('Did you mean flexure/stress?');
});

test('codes from elsewhere are known when they are found or named', () => {
  expect(accept([finding('file/open-edge')], ['file/open-edge']).mistakes).toEqual([]);
  expect(accept([], ['file/open-edge'], ['file/open-edge']).mistakes).toEqual([]);
  expect(accept([], ['file/open-edge']).mistakes).toHaveLength(1);
});

test('warnings and notes stop nothing', () => {
  expect(verdict([finding('rail/press', 'warning'), finding('flexure/frequency', 'note')])).toMatchObject({
    good: true,
    warnings: 1,
    notes: 1,
  });
});

test('every code is question/detail, and belongs to one check', () => {
  expect(new Set(CODES).size).toBe(CODES.length);
  for (const code of CODES) expect(code).toMatch(/^[a-z-]+\/[a-z-]+$/);
  expect(new Set(CHECKS.map(({ name }) => name)).size).toBe(CHECKS.length);
});
