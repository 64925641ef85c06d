"""Pool day: what to expect and to measure, what trials say about the model, and what they may correct."""
