import { workerData } from "node:worker_threads";

/** A thread that ends its process once the parent process is gone. */
setInterval(() => {
  if (process.ppid !== workerData) process.kill(process.pid, "SIGKILL");
}, 1000);
