import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { cruise, type ICruiseOptions, type ICruiseResult, type IFlattenedRuleSet } from 'dependency-cruiser';

interface Configuration {
  readonly forbidden: readonly { readonly name: string; readonly comment: string }[];
  readonly options: ICruiseOptions;
}

const configuration = createRequire(import.meta.url)('../import-direction.cjs') as Configuration;

export const ruleNames: readonly string[] = configuration.forbidden.map((rule) => rule.name);

export interface Violation {
  readonly rule: string;
  readonly from: string;
  readonly to: string;
}

export interface Cruise {
  readonly files: number;
  readonly violations: readonly Violation[];
}

/** Reads every import below `folder` and holds it against the rules. */
export async function cruiseTree(folder: string): Promise<Cruise> {
  const rooms = ['shared', 'backend', 'frontend', 'simulator', 'tests'].filter((room) =>
    existsSync(join(folder, room)),
  );
  const { output } = await cruise(rooms, {
    ...configuration.options,
    baseDir: folder,
    validate: true,
    ruleSet: { forbidden: configuration.forbidden } as unknown as IFlattenedRuleSet,
  });
  const { modules, summary } = output as ICruiseResult;
  return {
    files: modules.filter((module) => !module.source.includes('node_modules')).length,
    violations: summary.violations.map(({ rule, from, to }) => ({ rule: rule.name, from, to })),
  };
}
