"""What the vehicle looks like from the front, the side and above, as an area."""

from model.silhouette.area import Silhouettes, silhouettes, union_area
from model.silhouette.outline import Outline, outline

__all__ = ["Outline", "Silhouettes", "outline", "silhouettes", "union_area"]
