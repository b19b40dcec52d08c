// Loaded into the server before its own code: when the process that started it dies, even by kill -9, the server closes too.
process.on('disconnect', () => process.kill(process.pid, 'SIGTERM'));
process.channel?.unref();
