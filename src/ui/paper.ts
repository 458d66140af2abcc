import type { Trip } from '../archive/trip.ts';
import { briefingOf } from '../brief/brief.ts';
import type { GradeTold } from '../brief/gradeTold.ts';
import { gradeTold } from '../brief/gradeTold.ts';
import { briefingPage } from '../brief/page.ts';
import type { Matrix, Place } from '../convoy/matrix.ts';
import type { System } from '../units.ts';
import { requirementOfTrack } from '../grade/requirement.ts';
import { gradesInWorkers, requirementsKnown } from '../workers/grade.ts';
import { orderInWorker } from '../workers/order.ts';
import { say } from '../words/words.ts';
import { look } from './look.svelte.ts';
import { fileName, saveText } from './tripFile.ts';

/** What a briefing is written from: the trip, and what was worked out for it. */
export interface Told {
  readonly trip: Trip;
  readonly places: readonly Place[];
  readonly matrix: Matrix;
}

/** The briefing with its cards as a page for the printer; nothing where `signal` stops it. */
export async function printBriefing(told: Told, system: System, signal: AbortSignal): Promise<void> {
  const page = await pageOf(told, system, signal);
  if (page === null) return;
  const frame = document.createElement('iframe');
  frame.className = 'unseen';
  frame.title = say.files.briefingFrame;
  frame.srcdoc = page;
  frame.addEventListener('load', () => {
    frame.contentWindow?.addEventListener('afterprint', () => frame.remove());
    frame.contentWindow?.print();
  });
  document.body.append(frame);
}

/** The same page as a file, to send or to print elsewhere. */
export async function saveBriefing(told: Told, system: System, signal: AbortSignal): Promise<void> {
  const page = await pageOf(told, system, signal);
  if (page === null) return;
  saveText(page, `${say.files.briefingFile(fileName(told.trip.name))}.html`, 'text/html');
}

/** Null where it was stopped: a briefing is whole, or none. */
async function pageOf(
  { trip, places, matrix }: Told,
  system: System,
  signal: AbortSignal,
): Promise<string | null> {
  const order = await orderInWorker({ places, vehicles: trip.vehicles, direction: trip.direction }, signal);
  if (order === null) return null;
  const grade = await gradeOf(trip, places, signal);
  return signal.aborted ? null : briefingPage(briefingOf(trip, places, matrix, order, grade), system);
}

/**
 * The grade as this device tells grades, in the trip's direction; with what it takes where that was worked out before. None
 * where no worker answers: what is written does without.
 */
export async function gradeOf(
  trip: Trip,
  places: readonly Place[],
  signal?: AbortSignal,
): Promise<GradeTold | null> {
  const { classification, season } = look;
  const grades = await gradesInWorkers(places, trip.direction, season, classification, signal).catch(
    () => null,
  );
  if (grades === null) return null;
  const known = requirementsKnown(places, trip.direction, season);
  return gradeTold(trip, grades, classification, season, known && requirementOfTrack(known));
}
