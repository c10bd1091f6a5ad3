#!/usr/bin/env bash
# Reviews many takes as a Slurm job array, a share of them in each task, then makes the section's files from all results.
#
#   bin/recipes/slurm-array.sh 64%16 round --score etude.musicxml takes
#
# 64 is the number of shares; 16 of them run at the same time (without %16 as many as there is room for). `round` is the
# folder for results, made when it is missing. All that follows goes to `takesheet review` as it stands.
#
# This checkout, the takes and the folder for results must be seen by every node under the same path, and `node` must be
# found there. What the site wants to be told goes by sbatch's own variables: SBATCH_PARTITION, SBATCH_ACCOUNT,
# SBATCH_TIMELIMIT, SBATCH_MEM_PER_NODE. Slurm takes arrays of up to MaxArraySize tasks (1001 where nobody changed it).
#
# The same command again goes on from there after anything: results that stand are not made again.
#
# Writes round/shares/<share>-of-<shares>/ (what each task made), round/log/ (what each task said), and round/merged/ with
# everything, as one run on one machine makes it. A task fails when the request is wrong or it was stopped, and then nothing
# is merged; takes that could not be reviewed are listed in the merged section's files and make the last job end with 1.
#SBATCH --job-name=takesheet
#SBATCH --nodes=1
#SBATCH --ntasks=1
#SBATCH --mem=2G
#SBATCH --time=04:00:00
set -euo pipefail

# What is begun by the user: submits the tasks, and the job that waits for all of them.
submit() {
  local array=$1 out=$2
  shift 2
  if [[ ! $array =~ ^[1-9][0-9]*(%[1-9][0-9]*)?$ ]]; then
    echo "slurm-array.sh: “$array” is no number of shares; it must look like 64, or 64%16" >&2
    exit 2
  fi
  local program shares=${array%%%*} script=${BASH_SOURCE[0]} tasks merging
  program=$(cd "$(dirname "$script")/.." && pwd)/takesheet.js
  if [[ ! -e $program ]] || ! command -v node >/dev/null || ! command -v sbatch >/dev/null; then
    echo "slurm-array.sh: node, sbatch and the checkout of takesheet are needed here" >&2
    exit 2
  fi
  mkdir -p "$out/log"
  out=$(cd "$out" && pwd)
  tasks=$(sbatch --parsable --array="1-$array" --output="$out/log/share-%a.txt" \
    "$script" --share "$program" "$shares" "$out" "$@")
  # The section's files of 20,000 takes are made in 2 GB.
  merging=$(SBATCH_MEM_PER_NODE=${SBATCH_MEM_PER_NODE:-4G} sbatch --parsable --output="$out/log/merged.txt" \
    --dependency="afterok:${tasks%%;*}" --kill-on-invalid-dep=yes "$script" --merge "$program" "$shares" "$out" "$@")
  printf '%s\t%s\n' shares "${tasks%%;*}" merged "${merging%%;*}"
}

# One task of the array. Takes that cannot be reviewed (status 1) are a result, not a failure of the task.
review_share() {
  local program=$1 shares=$2 out=$3 share=$SLURM_ARRAY_TASK_ID
  shift 3
  node "$program" review --jobs 1 "$@" \
    --shard "$share/$shares" --out "$out/shares/$share-of-$shares" || [[ $? -eq 1 ]]
}

# The last job: copies all results into one folder and makes the section's files from them.
merge() {
  local program=$1 shares=$2 out=$3 share words=()
  shift 3
  mkdir -p "$out/merged"
  for ((share = 1; share <= shares; share++)); do
    cp -R "$out/shares/$share-of-$shares/." "$out/merged/"
  done
  while (($#)); do
    case $1 in
      --json-only) words+=("$1") ;;
      --paper) words+=("$1" "$2") ;;
    esac
    shift
  done
  node "$program" section "${words[@]}" "$out/merged"
}

case ${1-} in
  --share) review_share "${@:2}" ;;
  --merge) merge "${@:2}" ;;
  *)
    if (($# < 3)); then
      echo "usage: slurm-array.sh <shares> <folder for results> <words of takesheet review>" >&2
      exit 2
    fi
    submit "$@"
    ;;
esac
