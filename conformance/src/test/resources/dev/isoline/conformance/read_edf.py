# Reads an EDF+C file by the EDF+ specification alone: FILE EXPECTED.raw -> prints what a test compares.
import sys
import numpy as np
data = open(sys.argv[1], "rb").read()
field = lambda at, width: data[at:at + width].decode("ascii").strip()
assert all(32 <= b <= 126 for b in data[:int(field(184, 8))]), "header bytes outside 32..126"
ns, records = int(field(252, 4)), int(field(236, 8))
column = lambda before, width: [field(256 + before * ns + i * width, width) for i in range(ns)]
labels, dmin, dmax = column(0, 16), column(120, 8), column(128, 8)
pmin, pmax, per = column(104, 8), column(112, 8), [int(x) for x in column(216, 8)]
body = np.frombuffer(data[int(field(184, 8)):], "<i2").reshape(records, sum(per))
ecg = [body[:, sum(per[:i]):sum(per[:i + 1])].reshape(-1) for i in range(ns - 1)]
expected = np.fromfile(sys.argv[2], "<i2").reshape(-1, ns - 1)
gain = (float(pmax[0]) - float(pmin[0])) / (float(dmax[0]) - float(dmin[0]))
tal = body[3, sum(per[:-1]):].tobytes().rstrip(b"\0")
print(field(192, 44), field(8, 80), field(88, 80), labels[-1], gain, tal == b"+3\x14\x14",
      np.array_equal(np.stack(ecg, 1), expected), sep="|")
