/** Where a value comes from, or how it was found: "at Rack 3", but "by its exhaust meter" as it stands. */
export const wherePhrase = (where: string): string => (where.startsWith('by ') ? where : `at ${where}`);
