/** The age program of Debian (age-encryption.org), which is not ours, asked for a passphrase as a person is: on a terminal. */
import { execFileSync } from 'node:child_process';

/** It reads passphrases from its terminal only, so it is given one. */
const onTerminal = `
import os, pty, sys
passphrase, *command = sys.argv[1:]
pid, terminal = pty.fork()
if pid == 0:
    os.execvp(command[0], command)
said = b""
answered = 0
while True:
    try:
        piece = os.read(terminal, 1024)
    except OSError:
        break
    if not piece:
        break
    said += piece
    if said.count(b"assphrase") > answered and said.rstrip().endswith(b":"):
        answered = said.count(b"assphrase")
        os.write(terminal, passphrase.encode() + b"\\n")
status = os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1])
if status != 0:
    sys.exit(said.decode("utf-8", "replace"))
`;

/** @throws where it ends badly, with what it said */
export const age = (passphrase: string, ...args: readonly string[]): string =>
  execFileSync('python3', ['-c', onTerminal, passphrase, 'age', ...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });
