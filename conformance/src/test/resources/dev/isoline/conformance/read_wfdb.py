# Reads a WFDB record by header(5), signal(5), annot(5) alone: RECORD.hea EXPECTED.raw -> prints what a test compares.
import sys
import numpy as np
lines = [l.split() for l in open(sys.argv[1]) if not l.startswith("#")]
nsig, fs, nsamp = int(lines[0][1]), float(lines[0][2]), int(lines[0][3])
signals = lines[1:1 + nsig]
raw = np.fromfile(sys.argv[1][:-4] + ".dat", "u1").astype(int)
if signals[0][1] == "212":
    a, b, c = raw[0::3], raw[1::3], raw[2::3]
    flat = np.stack([a | (b & 15) << 8, c | (b & 240) << 4], 1).reshape(-1)
    flat = np.where(flat > 2047, flat - 4096, flat)
else:
    flat = np.fromfile(sys.argv[1][:-4] + ".dat", "<i2").astype(int)
frames = flat[:nsig * nsamp].reshape(nsamp, nsig)
sums = [((int(frames[:, i].sum()) + 32768) % 65536 - 32768) == int(signals[i][6]) for i in range(nsig)]
firsts = [frames[0, i] == int(signals[i][5]) for i in range(nsig)]
expected = np.fromfile(sys.argv[2], "<i2").reshape(-1, nsig)
words = np.fromfile(sys.argv[1][:-4] + ".atr", "<u2").astype(int)
at, i, beats = 0, 0, []
while words[i]:
    code, step = words[i] >> 10, words[i] & 1023
    if code == 59:
        at += (words[i + 1] << 16) + words[i + 2]
        i += 2
    else:
        at += step
        beats.append("%d:%d" % (at, code))
    i += 1
print(all(sums), all(firsts), np.array_equal(frames, expected), " ".join(beats), sep="|")
