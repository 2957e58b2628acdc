"""Counts QRS complexes in a file of 16-bit samples at 360 Hz with scipy.signal: band-pass, square, average, one threshold."""
import sys
import numpy as np
from scipy.signal import butter, filtfilt, find_peaks

x = np.fromfile(sys.argv[1], '<i2').astype(float)
band = filtfilt(*butter(2, [5 / 180, 18 / 180], 'band'), x)
energy = np.sqrt(np.convolve(band ** 2, np.ones(54) / 54, 'same'))
peaks, _ = find_peaks(energy, height=0.35 * np.median(np.sort(energy)[-len(energy) // 10:]), distance=90)
print(len(peaks))
