#!/bin/bash
# Slurm array job: sbatch --array=0-6 slurm.sh, then npx tsx merge.ts on any machine that sees the folder.
# A single part again: SHARD_COUNT=7 sbatch --array=3 slurm.sh
#SBATCH --job-name=noonloop-study
#SBATCH --cpus-per-task=4
#SBATCH --mem=3G
#SBATCH --time=01:00:00
#SBATCH --requeue
# Slurm sets SLURM_ARRAY_TASK_ID, _COUNT and _MIN, which run-part.ts reads. A requeued task goes on behind its last row.
set -euo pipefail
export SHARD_FIRST=0
cd "$SLURM_SUBMIT_DIR"
npx tsx run-part.ts
