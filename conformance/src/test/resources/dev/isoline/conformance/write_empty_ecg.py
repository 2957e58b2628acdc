# Writes a Part 10 file of SOP class General ECG Waveform Storage without any waveform.
import sys
from pydicom.dataset import Dataset, FileDataset, FileMetaDataset
from pydicom.uid import ExplicitVRLittleEndian
meta = FileMetaDataset()
meta.MediaStorageSOPClassUID = "1.2.840.10008.5.1.4.1.1.9.1.2"
meta.MediaStorageSOPInstanceUID = "2.25.1"
meta.TransferSyntaxUID = ExplicitVRLittleEndian
ds = FileDataset(sys.argv[1], {}, file_meta=meta, preamble=b"\0" * 128)
ds.SOPClassUID, ds.SOPInstanceUID = meta.MediaStorageSOPClassUID, "2.25.1"
ds.is_little_endian, ds.is_implicit_VR = True, False
ds.save_as(sys.argv[1], write_like_original=False)
