"""The bench under the parts."""
import numpy as np

from materials.bench_mat import bench_mat
from parts.ruler import edge_point, ruler
from studio.meshes import mesh_obj


def bench(mat, z=0.0):
    corners = np.array([[-90, -90, z], [90, -90, z], [90, 90, z], [-90, 90, z]], float)
    return mesh_obj('bench', corners, np.array([[0, 1, 2, 3]]), mat=mat, smooth=False, auto=0)


def bench_with_rule(truth, loc, rot, seed=0.0, stains=1.0, between=(40, 100)):
    """Bench mat and a steel rule; two of its lines become scale points of the truth."""
    bench(bench_mat(stains=stains, seed=seed))
    rule = ruler(loc, rot)
    first, second = ('rule-%d-mm' % mm for mm in between)
    for name, mm in ((first, between[0]), (second, between[1])):
        truth.point(name, rule, edge_point(rule, mm))
    truth.scale(first, second, between[1] - between[0])
    return rule
