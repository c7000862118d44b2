"""The workshop: an empty scene, its room, its lamps, the camera."""
import bpy
from mathutils import Vector

from studio import textures
from studio.shader import Shader

WARM, COOL, PLAIN = (1.0, 0.96, 0.90), (0.82, 0.91, 1.0), (1, 0.97, 0.93)


def empty_scene():
    bpy.ops.wm.read_factory_settings(use_empty=True)


def aim(thing, target):
    direction = Vector(target) - thing.location
    thing.rotation_euler = direction.to_track_quat('-Z', 'Y').to_euler()


def lamp(name, loc, target, size, power, color=(1, 1, 1), size_y=None):
    light = bpy.data.lights.new(name, 'AREA')
    light.energy, light.color, light.size = power, color, size
    if size_y:
        light.shape, light.size_y = 'RECTANGLE', size_y
    thing = bpy.data.objects.new(name, light)
    thing.location = loc
    bpy.context.scene.collection.objects.link(thing)
    aim(thing, target)
    return thing


def lamps(key=24000, window=9000, front=2500, at=(0, 0, 1), key_from=(-22, 18, 42)):
    """A large warm key, a cool window, a weak front. Powers in watts for a scene in centimetres."""
    lamp('key', key_from, at, 60, key, WARM, 14)
    lamp('window', (45, 10, 25), at, 40, window, COOL, 40)
    lamp('front', (6, -40, 30), at, 25, front, PLAIN, 10)


def room(strength=0.55, turn=0.0, seed=0):
    world = bpy.data.worlds.new('room')
    bpy.context.scene.world = world
    t = Shader('', world=world)
    v = t('Mapping', Vector=t('TexCoord', out=0), Rotation=(0, 0, turn))
    picture = t('TexEnvironment', Vector=v, props={'image': textures.room(1.0, seed)})
    t.out(t('Background', Color=picture, Strength=strength))
    world.cycles.sampling_method = 'AUTOMATIC'


def camera(loc, target, lens=90, fstop=16, focus=None, roll=0):
    """Lens in millimetres on a 36 mm wide sensor; lengths in centimetres, so the f-number is divided by 100."""
    data = bpy.data.cameras.new('camera')
    thing = bpy.data.objects.new('camera', data)
    bpy.context.scene.collection.objects.link(thing)
    data.lens, data.sensor_width, data.sensor_fit = lens, 36, 'AUTO'
    thing.location = loc
    aim(thing, target)
    thing.rotation_euler.rotate_axis('Z', roll)
    data.dof.use_dof = True
    data.dof.focus_distance = (Vector(focus or target) - thing.location).length
    data.dof.aperture_fstop, data.dof.aperture_blades = fstop / 100, 7
    data.clip_start, data.clip_end = 0.1, 2000
    bpy.context.scene.camera = thing
    return thing


def place(things, loc=(0, 0, 0), rot=(0, 0, 0), matrix=None):
    """Puts things together on one empty; what it gives can be placed again."""
    group = bpy.data.objects.new('group', None)
    bpy.context.scene.collection.objects.link(group)
    for thing in things:
        thing.parent = group
    group.location, group.rotation_euler = loc, rot
    if matrix is not None:
        group.matrix_world = matrix
    return group
