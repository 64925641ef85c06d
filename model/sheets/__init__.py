"""Pages to print: what stands on each as data, then as PDF, HTML, SVG and tables."""
