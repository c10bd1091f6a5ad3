import type { MeasureContext } from './context/context.js';
import { measureAccents } from './measures/accents.js';
import { measureAddedPlaces } from './measures/added-places.js';
import { measureArticulations } from './measures/articulations.js';
import { measureAttacks } from './measures/attacks.js';
import { measureBreathNoise } from './measures/breath-noise.js';
import { measureBreaths } from './measures/breaths.js';
import { measureContrasts } from './measures/contrasts.js';
import { measureCracks } from './measures/cracks.js';
import { measureEchoes } from './measures/echoes.js';
import { measureEmptyPlaces } from './measures/empty-places.js';
import { measureEntries } from './measures/entries.js';
import { measureFermatas } from './measures/fermatas.js';
import { measureGroups } from './measures/groups.js';
import { measureHairpins } from './measures/hairpins.js';
import { measureHeldNotes } from './measures/held-notes.js';
import { measureIntonation } from './measures/intonation.js';
import { measureLevels } from './measures/levels.js';
import { measureMarkOrder } from './measures/mark-order.js';
import { measureNoteShapes } from './measures/note-shapes.js';
import { measureNotes } from './measures/notes.js';
import { measureRecording } from './measures/recording.js';
import { measureReleases } from './measures/releases.js';
import { measureRests } from './measures/rests.js';
import { measureRisingLines } from './measures/rising-lines.js';
import { measureSlurredAir } from './measures/slurred-air.js';
import { measureStarts } from './measures/starts.js';
import { startsOfNotes } from './measures/starts-of-notes.js';
import { measureSteadiness } from './measures/steadiness.js';
import { measureTempo } from './measures/tempo.js';
import { measureTonguedAir } from './measures/tongued-air.js';
import { measureTransitions } from './measures/transitions.js';
import { measureTuning } from './measures/tuning.js';
import { measureUnevenness } from './measures/unevenness.js';
import { fitOwnLoudness } from './own-loudness.js';
import type { Measurements } from './types.js';

/**
 * Measures one aligned take. A new measure is one file in `measures/` and one line here.
 *
 * @param context take, features, part, alignment
 * @returns numbers with units; what cannot be measured says why
 *
 * Source: each measure names its own.
 */
export function measureTake(context: MeasureContext): Measurements {
  const notes = measureNotes(context);
  const withNotes = { ...context, notes };
  const levels = measureLevels(withNotes);
  const transitions = measureTransitions(context);
  const recording = measureRecording(withNotes);
  const groups = measureGroups(context);
  const heldNotes = measureHeldNotes(withNotes, recording);
  const begun = startsOfNotes(withNotes);
  const cracks = measureCracks(withNotes, begun);
  const withLoudness = { ...withNotes, ownLoudness: fitOwnLoudness(withNotes) };
  return {
    notes,
    levels,
    recording,
    tuning: measureTuning(withNotes),
    tempo: measureTempo(context),
    contrasts: measureContrasts(withLoudness, levels),
    hairpins: measureHairpins(withLoudness),
    fermatas: measureFermatas(context),
    transitions,
    groups,
    unevenness: measureUnevenness(context, groups),
    entries: measureEntries(context),
    accents: measureAccents(withLoudness, transitions),
    articulations: measureArticulations(context, transitions),
    emptyPlaces: measureEmptyPlaces(context),
    rests: measureRests(context),
    addedPlaces: measureAddedPlaces(context),
    echoes: measureEchoes(withNotes),
    breaths: measureBreaths(context, transitions),
    intonation: measureIntonation(withNotes),
    markOrder: measureMarkOrder(withLoudness),
    heldNotes,
    steadiness: measureSteadiness(heldNotes),
    cracks,
    starts: measureStarts(withNotes, begun, cracks),
    slurredAir: measureSlurredAir(context, transitions, recording),
    tonguedAir: measureTonguedAir(withNotes, transitions, recording),
    attacks: measureAttacks(withNotes),
    releases: measureReleases(withNotes, recording),
    risingLines: measureRisingLines(withLoudness, recording),
    noteShapes: measureNoteShapes(withNotes, recording),
    breathNoise: measureBreathNoise(withNotes, heldNotes, recording),
  };
}
