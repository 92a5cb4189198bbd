#!/usr/bin/env bash
# Runs one sweep three ways and compares the bytes: in one process, as an array of the batch engine
# Slurm, and under GNU parallel. Needs Debian's packages slurmctld, slurmd, slurm-client, munge and
# parallel; everything of theirs stays in FOLDER and on this machine's loopback.
#
# usage: run.sh STUDY.yaml SWEEP.yaml FOLDER
set -euo pipefail

study="$(realpath "$1")"
sweep="$(realpath "$2")"
mkdir -p "$3"
folder="$(realpath "$3")"
project="$(cd "$(dirname "$0")/../../.." && pwd)"
deno="${DENO:-npx -y deno@2.9.6}"
parts=3

for program in slurmctld slurmd munged sbatch parallel; do
  [ -n "$(PATH="$PATH:/usr/sbin" command -v "$program")" ] || {
    echo "skipped: $program is not here (Debian: apt-get install slurmctld slurmd slurm-client munge parallel)"
    exit 3
  }
done
export PATH="$PATH:/usr/sbin"
export WINTERGROUND_CACHE="$folder/cache"

started=()
stop() {
  for process in "${started[@]}"; do kill "$process" 2>/dev/null || true; done
  wait
}
trap stop EXIT

rows() { # name of the folder, further options
  local out="$1"
  shift
  (cd "$project" && $deno task sweep "$study" "$sweep" --out "$folder/$out" --workers 0 "$@")
}

same() { # what it was, folder
  cmp "$folder/alone/rows.csv" "$folder/$2/rows.csv"
  cmp "$folder/alone/rows.parquet" "$folder/$2/rows.parquet"
  echo "$1: the same bytes, $(($(wc -l <"$folder/alone/rows.csv") - 1)) rows"
}

rows alone >"$folder/alone.log" 2>&1

# the engine's own folders, keys and ports
user="$(id -un)"
host="$(hostname -s)"
mkdir -p "$folder/munge" "$folder/state" "$folder/spool"
chmod 700 "$folder/munge"
head -c 128 /dev/urandom >"$folder/munge/key"
chmod 400 "$folder/munge/key"
munged --foreground --force --num-threads=1 --key-file="$folder/munge/key" \
  --socket="$folder/munge/socket" --pid-file="$folder/munge/pid" \
  --log-file="$folder/munge/log" --seed-file="$folder/munge/seed" >"$folder/munge.out" 2>&1 &
started+=($!)
cat >"$folder/slurm.conf" <<CONF
ClusterName=loopback
SlurmctldHost=$host(127.0.0.1)
SlurmUser=$user
SlurmdUser=$user
SlurmctldPort=${SLURM_TEST_PORT:-26817}
SlurmdPort=$((${SLURM_TEST_PORT:-26817} + 1))
AuthType=auth/munge
AuthInfo=socket=$folder/munge/socket
StateSaveLocation=$folder/state
SlurmdSpoolDir=$folder/spool
SlurmctldPidFile=$folder/slurmctld.pid
SlurmdPidFile=$folder/slurmd.pid
SlurmctldLogFile=$folder/slurmctld.log
SlurmdLogFile=$folder/slurmd.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
MpiDefault=none
ReturnToService=2
NodeName=$host NodeAddr=127.0.0.1 CPUs=$(nproc) State=UNKNOWN
PartitionName=all Nodes=$host Default=YES MaxTime=INFINITE State=UP
CONF
export SLURM_CONF="$folder/slurm.conf"
sleep 1
slurmctld -D >"$folder/slurmctld.out" 2>&1 &
started+=($!)
slurmd -D >"$folder/slurmd.out" 2>&1 &
started+=($!)
for _ in $(seq 120); do
  sinfo -h -o %T 2>/dev/null | grep -q idle && break
  sleep 0.5
done
sinfo -h -o '%N %T'

array() { # tasks, further options of the sweep
  local tasks="$1"
  shift
  sbatch --wait --array="$tasks" --output="$folder/array-%a.log" \
    --wrap "cd '$project' && $deno task sweep '$study' '$sweep' --out '$folder/array' --workers 0 $*"
}

array "1-$parts"
rows array --merge >"$folder/array.log" 2>&1
same "Slurm array of $parts" array
# a task that is sent again finds its part
rm "$folder/array/rows.csv" "$folder/array/rows.parquet" "$folder/array/rows-2-of-$parts.csv"
array 2 --shards "$parts"
rows array --merge >>"$folder/array.log" 2>&1
same "one task sent again" array

seq "$parts" | (cd "$project" && parallel --jobs 2 \
  "$deno task sweep '$study' '$sweep' --out '$folder/parallel' --workers 0 --shards $parts #" {}) \
  >"$folder/parallel.log" 2>&1
rows parallel --merge >>"$folder/parallel.log" 2>&1
same "GNU parallel, $parts parts" parallel
