"""The frame on its planes: joints, bars, and what to saw."""
