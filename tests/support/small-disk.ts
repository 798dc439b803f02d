import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, statfsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A disk in memory that is soon full. */
export interface SmallDisk {
  readonly folder: string;
  /** Lets it be read only, or be written again. */
  readonly allowWrites: (allowed: boolean) => void;
  /** Sets its size so that this much is left. */
  readonly leave: (kilobytes: number) => void;
  readonly clear: () => void;
}

const mount = (...args: string[]): boolean => spawnSync("mount", args).status === 0;

/** Makes one; undefined where disks cannot be mounted (not root, or a container without the right to). */
export function smallDisk(kilobytes: number): SmallDisk | undefined {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "cornerwise-disk-"));
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  if (!mount("-t", "tmpfs", "-o", `size=${kilobytes}k`, "tmpfs", folder)) {
    remove();
    return undefined;
  }
  const remount = (option: string): void => {
    if (!mount("-o", `remount,${option}`, folder))
      throw new Error(`${folder} could not be mounted ${option}`);
  };
  return {
    folder,
    allowWrites: (allowed) => remount(allowed ? "rw" : "ro"),
    leave: (left) => {
      const { blocks, bfree, bsize } = statfsSync(folder);
      remount(`size=${Math.ceil(((blocks - bfree) * bsize) / 1024) + left}k`);
    },
    clear: () => {
      spawnSync("umount", ["-l", folder]);
      remove();
    },
  };
}
