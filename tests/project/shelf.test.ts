import { expect, test } from 'vitest';
import { takePreferences, putPreferences, DEFAULT_PREFERENCES } from '$lib/project/preferences.ts';
import { DEFAULT_LIMITS, printProject, type Project } from '$lib/project/project.ts';
import { putProject, takeProject, type Shelf } from '$lib/project/shelf.ts';

const PROJECT: Project = {
  text: 'k',
  former: 'p',
  size: 0,
  setup: 'dpn-4',
  stage: 0,
  row: 0,
  limits: DEFAULT_LIMITS,
  tried: []
};

function shelf(): Shelf {
  const kept = new Map<string, string>();
  return { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) };
}

const FULL: Shelf = {
  getItem: () => 'not JSON',
  setItem: () => {
    throw new DOMException('full', 'QuotaExceededError');
  }
};

test('takeProject() gives back the project that was put', () => {
  const place = shelf();
  expect(takeProject(place)).toBeNull();
  expect(putProject(place, printProject(PROJECT))).toBe(true);
  expect(takeProject(place)).toEqual({ kind: 'project', project: PROJECT });
});

test('putProject() tells when there is no room', () => {
  expect(putProject(FULL, printProject(PROJECT))).toBe(false);
});

test('takePreferences() takes what it can read and the usual values for the rest', () => {
  const place = shelf();
  expect(takePreferences(place)).toEqual(DEFAULT_PREFERENCES);
  putPreferences(place, { theme: 'dark', mirrored: true, speed: 2 });
  expect(takePreferences(place)).toEqual({ theme: 'dark', mirrored: true, speed: 2 });
  place.setItem('roundsplit.preferences', '{"theme":"plaid","mirrored":true}');
  expect(takePreferences(place)).toEqual({ theme: 'system', mirrored: true, speed: 1 });
  expect(takePreferences(FULL)).toEqual(DEFAULT_PREFERENCES);
});
