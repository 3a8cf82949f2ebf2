"""A cluster of processes on this machine, watched: progress, memory of the workers, and an executor that dies."""

import os
import signal
import sys
import threading
import time
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pyspark
from pyspark.sql import SparkSession

HERE = Path(__file__).resolve().parent


def session(executors: int, folder: Path) -> SparkSession:
    """A driver and so many executors of one core, with the package and the library sent to them as on a cluster."""
    os.environ |= {
        "SPARK_HOME": str(Path(pyspark.__file__).parent),
        "SPARK_LOCAL_IP": "127.0.0.1",
        "PYSPARK_PYTHON": sys.executable,
    }
    conf = {
        "spark.driver.host": "127.0.0.1", "spark.driver.bindAddress": "127.0.0.1", "spark.ui.enabled": "false",
        "spark.ui.showConsoleProgress": "false", "spark.sql.files.maxPartitionBytes": "16m",
        "spark.sql.shuffle.partitions": "4", "spark.sql.adaptive.enabled": "false", "spark.log.level": "OFF",
    }  # fmt: skip
    builder = SparkSession.builder.master(f"local-cluster[{executors},1,1024]").appName("season")
    for name, value in conf.items():
        builder = builder.config(name, value)
    spark = builder.getOrCreate()
    # Executors fetch both from here when they start, also those that start later.
    folder.mkdir(parents=True, exist_ok=True)
    package = folder / "hilum_spark.zip"
    with zipfile.ZipFile(package, "w") as archive:
        for file in sorted([*(HERE.parent / "hilum_spark").glob("*.py"), HERE / "season.py", HERE / "digest.py"]):
            archive.write(file, file.relative_to(HERE if file.parent == HERE else HERE.parent))
    (folder / "libhilum.so").write_bytes(Path(os.environ["HILUM_LIBRARY"]).read_bytes())
    spark.sparkContext.addPyFile(str(package))
    spark.sparkContext.addFile(str(folder / "libhilum.so"))
    return spark


def _processes() -> dict[int, tuple[int, str]]:
    """Parent and command of every process."""
    found = {}
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                stat, line = (entry / "stat").read_text(), (entry / "cmdline").read_bytes()
            except OSError:
                continue
            found[int(entry.name)] = (int(stat.rpartition(")")[2].split()[1]), line.replace(b"\0", b" ").decode())
    return found


def _ours(of: dict[int, tuple[int, str]], word: str) -> list[int]:
    """Our own descendants whose command has a word in it."""

    def is_ours(pid: int) -> bool:
        while pid in of and pid != os.getpid():
            pid = of[pid][0]
        return pid == os.getpid()

    return [pid for pid, (_, command) in of.items() if word in command and is_ours(pid)]


def _memory(pid: int) -> int:
    """Megabytes of a process that are its own."""
    try:
        text = Path(f"/proc/{pid}/smaps_rollup").read_text()
    except OSError:
        return 0
    lines = [line for line in text.splitlines() if line.startswith(("Private_Clean", "Private_Dirty"))]
    return sum(int(line.split()[1]) for line in lines) // 1024


def processor_time() -> float:
    """Seconds of the processor that executors and their workers have had so far."""
    processes, ticks = _processes(), os.sysconf("SC_CLK_TCK")
    spent = 0
    for pid in {*_ours(processes, "CoarseGrainedExecutorBackend"), *_ours(processes, "pyspark.daemon")}:
        try:
            fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
        except OSError:
            continue
        spent += int(fields[11]) + int(fields[12])
    return spent / ticks


class Watch:
    """What was seen while a job ran."""

    def __init__(self) -> None:
        self.memory: dict[int, list[tuple[float, int]]] = {}
        self.killed: list[int] = []
        self.failed_tasks = 0

    def growth(self) -> tuple[int, int]:
        """The largest worker in the second and in the last quarter of the stage that calculates, in MB."""
        quarters: list[list[int]] = [[], [], [], []]
        for share, size in max(self.memory.values(), key=lambda seen: sum(size for _, size in seen), default=[]):
            quarters[min(3, int(share * 4))].append(size)
        return max(quarters[1], default=0), max(quarters[3], default=0)


@contextmanager
def watched(spark: SparkSession, name: str, kill_at: float | None = None) -> Iterator[Watch]:
    """Shows progress of the jobs inside; kills an executor when that share of the largest stage is done."""
    watch, done, start = Watch(), threading.Event(), time.monotonic()
    tracker = spark.sparkContext.statusTracker()

    def look() -> None:
        shown = 0.0
        while not done.wait(0.25):
            stages = [tracker.getStageInfo(stage) for stage in tracker.getActiveStageIds()]
            stages = [stage for stage in stages if stage is not None and stage.numTasks > 2]
            if not stages:
                continue
            stage = max(stages, key=lambda stage: stage.numTasks)
            share = stage.numCompletedTasks / stage.numTasks
            processes = _processes()
            sizes = [_memory(pid) for pid in _ours(processes, "pyspark.daemon")]
            watch.memory.setdefault(stage.stageId, []).append((share, max(sizes, default=0)))
            watch.failed_tasks = max(watch.failed_tasks, stage.numFailedTasks)
            if kill_at is not None and not watch.killed and share >= kill_at:
                executors = _ours(processes, "CoarseGrainedExecutorBackend")
                # One that the driver's JVM started for us, by its number.
                os.kill(executors[0], signal.SIGKILL)
                watch.killed.append(executors[0])
                print(f"  {name}: killed executor {executors[0]} of {executors} at {share:.0%}", flush=True)
            if time.monotonic() - shown > 5:
                shown = time.monotonic()
                # What was done twice counts twice.
                line = f"{stage.numCompletedTasks}/{stage.numTasks} tasks, {stage.numFailedTasks} lost"
                print(f"  {name}: {line}, workers {sizes} MB, {shown - start:.0f} s", flush=True)

    thread = threading.Thread(target=look, daemon=True)
    thread.start()
    try:
        yield watch
    finally:
        done.set()
        thread.join()
        print(f"  {name}: {time.monotonic() - start:.1f} s", flush=True)
