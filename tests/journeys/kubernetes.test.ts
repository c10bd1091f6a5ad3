import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseAllDocuments } from 'yaml';
import { needs } from '../outside/programs.js';
import { goodTake, SHORT_PART } from './short-part.js';
import { everyFile, PROJECT, put, takesheet } from './takesheet.js';

interface Container {
  readonly name: string;
  readonly image: string;
  readonly command: readonly string[];
  readonly env: readonly { readonly name: string; readonly value: string }[];
  readonly resources: Readonly<Record<'requests' | 'limits', Readonly<Record<'cpu' | 'memory', string>>>>;
  readonly securityContext: Readonly<Record<string, unknown>>;
  readonly volumeMounts: readonly { readonly name: string; readonly mountPath: string; readonly readOnly?: boolean }[];
}

interface Job {
  readonly apiVersion: string;
  readonly kind: string;
  readonly metadata: { readonly name: string };
  readonly spec: {
    readonly completionMode?: string;
    readonly completions?: number;
    readonly parallelism?: number;
    readonly suspend?: boolean;
    readonly template: {
      readonly metadata: { readonly labels: Readonly<Record<string, string>> };
      readonly spec: {
        readonly restartPolicy: string;
        readonly automountServiceAccountToken: boolean;
        readonly securityContext: Readonly<Record<string, unknown>>;
        readonly containers: readonly [Container];
        readonly volumes: readonly { readonly name: string }[];
      };
    };
  };
}

// YAML 1.1 is what Kubernetes reads: there `n` and `no` are no words but values.
const text = readFileSync(join(PROJECT, 'bin', 'recipes', 'kubernetes-job.yaml'), 'utf8');
const documents = parseAllDocuments(text, { version: '1.1' });
const [shares, merged, policy] = documents.map((document) => document.toJS()) as [Job, Job, Record<string, unknown>];
const container = (job: Job): Container => job.spec.template.spec.containers[0];
const variable = (job: Job, wanted: string): string =>
  container(job).env.find(({ name }) => name === wanted)?.value ?? '';

const IMAGE = container(shares).image;

let root = '';

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'kubernetes-'));
});
afterAll(() => {
  rmSync(root, { recursive: true });
});

/** Fields of the first value that the second lacks or holds otherwise, as paths. */
function lost(before: unknown, after: unknown, path = ''): string[] {
  if (typeof before !== 'object' || before === null) return before === after ? [] : [path];
  if (typeof after !== 'object' || after === null) return [path];
  return Object.entries(before).flatMap(([key, value]) =>
    lost(value, (after as Record<string, unknown>)[key], path === '' ? key : `${path}.${key}`),
  );
}

/** The release of the types in kubectl, 32 for 1.32. */
function minorOfKubectl(): number {
  const { stdout } = spawnSync('kubectl', ['version', '--client', '--output', 'json'], { encoding: 'utf8' });
  return Number.parseInt(JSON.parse(stdout).clientVersion.minor, 10);
}

/**
 * A job as kubectl reads it into the types of the Kubernetes API and prints it again: fields they do not have are gone, and
 * a field of another type is an error. No cluster is asked.
 */
function readByKubectl(job: unknown): { status: number | null; job: unknown; stderr: string } {
  const file = join(root, 'job.json');
  // Where nothing is to be set, kubectl prints nothing.
  writeFileSync(file, JSON.stringify(job).replaceAll(IMAGE, 'another:1'));
  const words = ['set', 'image', '--local', '-f', file, '-o', 'json', `*=${IMAGE}`];
  const { status, stdout, stderr } = spawnSync('kubectl', words, { encoding: 'utf8' });
  return { status, job: status === 0 ? JSON.parse(stdout) : null, stderr };
}

describe('the recipe for Kubernetes', () => {
  it('is YAML without a fault, of two jobs and a policy', () => {
    expect(documents.flatMap(({ errors, warnings }) => [...errors, ...warnings])).toEqual([]);
    expect([shares, merged, policy].map(({ apiVersion, kind }) => `${apiVersion} ${kind}`)).toEqual([
      'batch/v1 Job',
      'batch/v1 Job',
      'networking.k8s.io/v1 NetworkPolicy',
    ]);
  });

  it.for([
    { name: 'shares', job: shares, since21: ['spec.completionMode'] },
    { name: 'merged', job: merged, since21: ['spec.suspend'] },
  ])('$name: every field is one of the Kubernetes API, with its type', ({ job, since21 }, context) => {
    needs(context, 'kubectl');
    const read = readByKubectl(job);
    expect(read).toMatchObject({ status: 0, stderr: '' });
    // Source: release notes of Kubernetes 1.21, which brought both fields.
    expect(lost(job, read.job)).toEqual(minorOfKubectl() < 21 ? since21 : []);
  });

  it('would be found out with a field that is none, or of another type', (context) => {
    needs(context, 'kubectl');
    const misspelt = { ...shares, spec: { ...shares.spec, backOffLimits: 3 } };
    expect(lost(misspelt, readByKubectl(misspelt).job)).toContain('spec.backOffLimits');
    expect(readByKubectl({ ...shares, spec: { ...shares.spec, completions: 'eight' } }).status).not.toBe(0);
  });

  // Source: Kubernetes API reference, Job v1: completions must be set in Indexed mode; a job's pods restart Never or OnFailure.
  it('is an indexed job that says everywhere the same number of shares, and the same image', () => {
    expect(container(merged).image).toBe(IMAGE);
    expect(shares.spec).toMatchObject({ completionMode: 'Indexed', completions: expect.any(Number) });
    expect([variable(shares, 'SHARES'), variable(merged, 'SHARES')]).toEqual(
      Array(2).fill(`${shares.spec.completions}`),
    );
    expect(shares.spec.parallelism).toBeLessThanOrEqual(shares.spec.completions ?? 0);
    expect(merged.spec.suspend).toBe(true);
  });

  // Source: Kubernetes documentation, Pod Security Standards, level “Restricted”.
  it.each([
    ['shares', shares],
    ['merged', merged],
  ])('%s: runs with no more rights than it needs', (_name, job) => {
    const { template } = job.spec;
    expect(template.spec).toMatchObject({
      restartPolicy: 'Never',
      automountServiceAccountToken: false,
      securityContext: { runAsNonRoot: true, seccompProfile: { type: 'RuntimeDefault' } },
    });
    expect(template.spec.containers).toHaveLength(1);
    const { securityContext, resources, volumeMounts, env } = container(job);
    expect(securityContext).toEqual({
      allowPrivilegeEscalation: false,
      readOnlyRootFilesystem: true,
      capabilities: { drop: ['ALL'] },
    });
    // Source: Kubernetes documentation, resource quantities.
    for (const { cpu, memory } of [resources.requests, resources.limits]) {
      expect(cpu).toMatch(/^\d+m?$/);
      expect(memory).toMatch(/^\d+(Mi|Gi)$/);
    }
    expect(volumeMounts.filter(({ readOnly }) => readOnly !== true).map(({ mountPath }) => mountPath)).toEqual([
      '/results',
    ]);
    expect(volumeMounts.map(({ mountPath }) => mountPath)).toEqual(
      env.map(({ value }) => value).filter((value) => value.startsWith('/')),
    );
    const volumes = template.spec.volumes.map(({ name }) => name);
    expect(volumeMounts.filter(({ name }) => !volumes.includes(name))).toEqual([]);
  });

  // Source: Kubernetes documentation, Network Policies, “Default deny all ingress and all egress traffic”, for these pods.
  it('leaves its pods without a network', () => {
    const { labels } = shares.spec.template.metadata;
    expect(merged.spec.template.metadata.labels).toEqual(labels);
    expect(policy.spec).toEqual({ podSelector: { matchLabels: labels }, policyTypes: ['Ingress', 'Egress'] });
  });

  it('has commands that together give what one run gives', () => {
    const takes = [1, 2, 3].map((i) => [`round/takes/take ${i}.wav`, goodTake({ seed: i, tempoFactor: 1.5 })] as const);
    put(root, { 'round/etude.musicxml': SHORT_PART, 'round/takes/song.mp3': 'ID3', ...Object.fromEntries(takes) });
    const places = { PROGRAM: PROJECT, ROUND: join(root, 'round'), RESULTS: join(root, 'results') };
    const run = (job: Job, index: number): void => {
      const [program = '', ...words] = container(job).command;
      const env = { PATH: process.env.PATH, ...places, SHARES: '3', JOB_COMPLETION_INDEX: `${index}` };
      const { status, stderr } = spawnSync(program, words, { cwd: '/', env, encoding: 'utf8' });
      expect({ status, stderr }).toEqual({ status: 0, stderr: expect.not.stringMatching(/takesheet:/) });
    };
    for (const index of [0, 1, 2]) run(shares, index);
    run(merged, 0);
    takesheet(root, 'review', '--score', 'round/etude.musicxml', '--out', 'one run', 'round/takes');
    expect(everyFile(join(root, 'results', 'merged'))).toEqual(everyFile(join(root, 'one run')));
  });
});
