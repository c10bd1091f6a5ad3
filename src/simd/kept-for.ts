/**
 * Keeps what was made last: takes of a section are alike, so what was opened for one serves the next.
 *
 * @param make makes something for a plan, which is plain data
 * @returns gives what was made for an equal plan, as long as no other plan came between
 */
export function keptFor<Plan, Made>(make: (plan: Plan) => Made): (plan: Plan) => Made {
  let latest: { readonly key: string; readonly made: Made } | null = null;
  return (plan) => {
    const key = JSON.stringify(plan);
    if (latest?.key !== key) latest = { key, made: make(plan) };
    return latest.made;
  };
}
