"""How the vehicle resists being moved and turned in water."""
