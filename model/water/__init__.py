"""The vehicle in the water: density, buoyancy and trim."""
