"""Which fittings of the stock go on a joint."""
